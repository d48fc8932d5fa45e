/**
 * Places where a player will ask how far an accidental holds: under `note` and `group` it ends before the barline, and binds
 * no other voice.
 */
import type { Fix } from '../../grammar/findings/finding';
import { compare, equal, type Time } from '../../grammar/time';
import { accidentalOf } from '../score/pitch';
import type { NoteMember, VoiceEvent } from '../score/score';
import {
  between,
  eventNumber,
  inWords,
  isSounding,
  type Line,
  membersWhere,
  notesOf,
  notesOver,
  type Sounding,
  type Struck,
} from './lines';
import { overSystems, problemIn, type SystemProblem, type View } from './systems';

const isOnLineOf = (a: NoteMember, b: NoteMember): boolean =>
  a.spelling.letter === b.spelling.letter && a.octave === b.octave;

const SIGNS: Readonly<Record<number, string>> = { [-2]: 'bb', [-1]: 'b', 0: 'n', 1: '#', 2: '##' };

/** Says a note's sounding form by an editor's sign, or another form. */
function signed({ spelling, source }: NoteMember, alteration: number): readonly Fix[] {
  const sign = SIGNS[alteration];
  if (sign === undefined || spelling.accidental !== undefined) return [];
  const title = `add the editor's ${sign}`;
  return [{ title, edits: [{ pos: source.pos + spelling.letter.length, len: 0, text: `[${sign}]` }] }];
}

// ─── later in the voice ──────────────────────────────────────────────────────────────────────────────────────────

/** Further on in a bar without end nobody remembers the accidental. */
const SOON = 8;

/** The next note on the same line in the same bar of the voice, small notes passed over. */
function nextOnLine({ voice, index, event, member }: Struck): Pick<Struck, 'event' | 'member'> | undefined {
  for (let i = index + 1; i <= Math.min(index + SOON, voice.events.length - 1); i++) {
    const next = voice.events[i] as VoiceEvent;
    if (next.bar !== event.bar) return undefined;
    const found = isSounding(next) ? next.members.find((one) => isOnLineOf(one, member)) : undefined;
    if (found !== undefined) return { event: next, member: found };
  }
  return undefined;
}

export const accidentalEnds = overSystems('accidental-ends', ({ score, facts }) => {
  if (facts.practice === 'bar') return [];
  const signedNotes = membersWhere(score, (member, event) => accidentalOf(member) !== undefined && isSounding(event));
  return signedNotes.flatMap((struck): SystemProblem[] => {
    const { voice, event, member } = struck;
    const next = nextOnLine(struck);
    if (next === undefined || accidentalOf(next.member) !== undefined || next.member.tiedFrom) return [];
    if (next.member.alteration === member.alteration) return [];
    const note = inWords(member);
    const slots = {
      voice: facts.voices[voice.voice] ?? '',
      note,
      event: eventNumber(event),
      rule: facts.practice,
      next: inWords(next.member),
      there: eventNumber(next.event),
    };
    return [
      problemIn({
        code: 'accidental-ends',
        at: next.member.source,
        slots,
        bar: next.event.bar,
        fixes: signed(next.member, next.member.alteration),
        related: { message: note, source: member.source, system: 0 },
      }),
    ];
  });
});

// ─── meanwhile in another voice ──────────────────────────────────────────────────────────────────────────────────

/** How long an accidental is in force: through the repetitions of its note, under `group` through its beam. */
function reach({ facts }: View, line: Line, index: number): Time {
  const note = line[index] as Sounding;
  const isHeld = (next: Sounding, end: Time): boolean =>
    equal(next.onset, end) &&
    (facts.practice === 'group'
      ? note.event.beam !== undefined && next.event.beam === note.event.beam
      : next.member.midi === note.member.midi);
  let { end } = note;
  for (let i = index + 1; i < line.length; i++) {
    const next = line[i] as Sounding;
    if (compare(next.onset, end) > 0) break;
    if (isHeld(next, end)) end = next.end;
  }
  return end;
}

/** Struck on the line of a signed note while its sign is in force, and sounding otherwise. */
const isAgainst = (struck: Sounding, note: Sounding): boolean =>
  compare(note.onset, struck.onset) <= 0 &&
  struck.member.stave === note.member.stave &&
  isOnLineOf(struck.member, note.member) &&
  accidentalOf(struck.member) === undefined &&
  !struck.member.tiedFrom &&
  struck.member.alteration !== note.member.alteration;

function shared({ facts }: View, struck: Sounding, note: Sounding): SystemProblem {
  const [voice, other] = [struck, note].map((one) => facts.voices[one.voice] ?? '');
  const against = inWords(note.member);
  const slots = { voice: voice ?? '', note: inWords(struck.member), against, other: other ?? '', rule: facts.practice };
  return problemIn({
    code: 'accidental-other-voice',
    at: struck.member.source,
    slots,
    bar: struck.at.bar,
    fixes: [struck, note].flatMap(({ member: { alteration } }) => signed(struck.member, alteration)),
    related: { message: `${against} in ${other}`, source: note.member.source, system: note.at.system },
  });
}

export const sharedLine = overSystems('accidental-other-voice', (view) => {
  if (view.facts.practice === 'bar') return [];
  const own = notesOf(view.score);
  return notesOver(view).flatMap((line, voice) =>
    line.flatMap((note, index) => {
      if (accidentalOf(note.member) === undefined) return [];
      const end = reach(view, line, index);
      return own
        .filter((_, other) => other !== voice)
        .flatMap((other) => between(other, note.onset, end))
        .filter((struck) => isAgainst(struck, note))
        .map((struck) => shared(view, struck, note));
    }),
  );
});
