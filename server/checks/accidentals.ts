/**
 * Places where a player will ask how far an accidental holds: under `note` and `group` it ends before the barline, and binds
 * no other voice.
 */
import type { Fix } from '../../grammar/findings/finding';
import { signOf } from '../../grammar/vocabulary/pitches';
import { accidentalOf } from '../score/pitch';
import type { NoteMember, SystemVoice, VoiceEvent } from '../score/score';
import { countTo, isMixed } from './lines';
import { editorsSign, inWords } from './pitches';
import { isSounding, type Line, type Sounding, type Struck } from './sounding';
import { alongPassages, type Facts, type Look, problemIn, type SystemProblem } from './systems';

const isOnLineOf = (a: NoteMember, b: NoteMember): boolean =>
  a.spelling.letter === b.spelling.letter && a.octave === b.octave;

/** Says a note's sounding form by an editor's sign, or another form. */
function signOn(member: NoteMember, alteration: number): readonly Fix[] {
  const sign = signOf(alteration);
  return sign === undefined || member.spelling.accidental !== undefined ? [] : [editorsSign(member, sign)];
}

// ─── later in the voice ──────────────────────────────────────────────────────────────────────────────────────────

/** Further on in a bar without end nobody remembers the accidental. */
const SOON = 8;

/** The next note on the same line in the same bar of the voice, small notes passed over. */
function nextOnLine({ events }: SystemVoice, index: number, member: NoteMember): Note | undefined {
  const { bar } = events[index] as VoiceEvent;
  const last = Math.min(index + SOON, events.length - 1);
  for (let i = index + 1; i <= last; i++) {
    const next = events[i] as VoiceEvent;
    if (next.bar !== bar) return undefined;
    if (!isSounding(next)) continue;
    for (const one of next.members) if (isOnLineOf(one, member)) return { event: next, member: one };
  }
  return undefined;
}

/** A member with its event. */
type Note = Pick<Struck, 'event' | 'member'>;

const endsBefore = (next: NoteMember, { alteration }: NoteMember): boolean =>
  accidentalOf(next) === undefined && !next.tiedFrom && next.alteration !== alteration;

function ended({ voices, practice }: Facts, voice: number, signed: Note, next: Note): SystemProblem {
  const note = inWords(signed.member);
  const slots = {
    voice: voices[voice] ?? '',
    note,
    rule: practice,
    next: inWords(next.member),
  };
  return problemIn({
    code: 'accidental-ends',
    at: next.member.source,
    slots,
    bar: next.event.bar,
    fixes: signOn(next.member, next.member.alteration),
    related: { message: note, source: signed.member.source, system: 0 },
  });
}

export const accidentalEnds: Look = ({ score, facts }) => {
  const found: SystemProblem[] = [];
  if (facts.practice === 'bar') return found;
  for (const voice of score.voices) {
    for (let index = 0; index < voice.events.length; index++) {
      const event = voice.events[index] as VoiceEvent;
      if (!isSounding(event)) continue;
      for (const member of event.members) {
        const next = accidentalOf(member) === undefined ? undefined : nextOnLine(voice, index, member);
        if (next !== undefined && endsBefore(next.member, member))
          found.push(ended(facts, voice.voice, { event, member }, next));
      }
    }
  }
  return found;
};

// ─── meanwhile in another voice ──────────────────────────────────────────────────────────────────────────────────

/** How long an accidental is in force: through the repetitions of its note, under `group` through its beam. */
function reach({ practice }: Facts, line: Line, index: number): number {
  const note = line[index] as Sounding;
  const isHeld = (next: Sounding): boolean =>
    practice === 'group'
      ? note.event.beam !== undefined && next.event.beam === note.event.beam
      : next.midi === note.midi;
  let { end } = note;
  for (let i = index + 1; i < line.length; i++) {
    const next = line[i] as Sounding;
    if (next.onset > end) break;
    if (next.onset === end && isHeld(next)) end = next.end;
  }
  return end;
}

/** Struck on the line of a signed note while its sign is in force, and sounding otherwise. */
const isAgainst = (struck: Sounding, note: Sounding): boolean =>
  struck.step === note.step &&
  struck.member.alteration !== note.member.alteration &&
  struck.member.stave === note.member.stave &&
  struck.bar.own &&
  accidentalOf(struck.member) === undefined &&
  !struck.member.tiedFrom;

function shared({ voices, practice }: Facts, struck: Sounding, note: Sounding): SystemProblem {
  const [voice, other] = [voices[struck.voice] ?? '', voices[note.voice] ?? ''];
  const against = inWords(note.member);
  const slots = { voice, note: inWords(struck.member), against, other, rule: practice };
  return problemIn({
    code: 'accidental-other-voice',
    at: struck.member.source,
    slots,
    bar: struck.bar.bar,
    fixes: [struck, note].flatMap(({ member: { alteration } }) => signOn(struck.member, alteration)),
    related: { message: `${against} in ${other}`, source: note.member.source, system: note.bar.system },
  });
}

/** The notes of a line against a signed one: what is struck from its onset to the end of its reach. */
function againstIn(other: Line, note: Sounding, end: number): Sounding[] {
  const found: Sounding[] = [];
  for (let index = countTo(other, note.onset - 1); index < other.length; index++) {
    const struck = other[index] as Sounding;
    if (struck.onset >= end) break;
    if (isAgainst(struck, note)) found.push(struck);
  }
  return found;
}

export const sharedLine: Look = alongPassages((passage, facts) => {
  const { lines, mixed } = passage;
  if (facts.practice === 'bar' || mixed === 0) return [];
  return lines.flatMap((line) =>
    line.flatMap((note, index) => {
      if (!isMixed(passage, note) || accidentalOf(note.member) === undefined) return [];
      const end = reach(facts, line, index);
      const others = lines.filter((other) => other !== line);
      return others.flatMap((other) => againstIn(other, note, end)).map((struck) => shared(facts, struck, note));
    }),
  );
});
