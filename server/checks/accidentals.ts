/**
 * Places where a player will ask how far an accidental holds: under `note` and `group` it ends before the barline, and binds
 * no other voice.
 */
import type { Fix } from '../../grammar/findings/finding';
import { compare, equal, type Time } from '../../grammar/time';
import { accidentalOf } from '../score/pitch';
import type { NoteMember, VoiceEvent } from '../score/score';
import { eventNumber, inWords, isSounding, type Line, notesOf, notesOver, type Sounding } from './lines';
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

interface Struck {
  readonly event: VoiceEvent;
  readonly member: NoteMember;
}

/** The next note on the same line in the same bar of the voice, small notes passed over. */
function nextOnLine(events: readonly VoiceEvent[], from: number, member: NoteMember): Struck | undefined {
  const bar = events[from]?.bar;
  for (let index = from + 1; events[index]?.bar === bar; index++) {
    const event = events[index];
    if (event === undefined) return undefined;
    const found = isSounding(event) ? event.members.find((one) => isOnLineOf(one, member)) : undefined;
    if (found !== undefined) return { event, member: found };
  }
  return undefined;
}

function endIn(view: View, voice: number, { event, member }: Struck, next: Struck): SystemProblem {
  const slots = {
    voice: view.facts.voices[voice] ?? '',
    note: inWords(member),
    event: eventNumber(event),
    rule: view.facts.practice,
    next: inWords(next.member),
    there: eventNumber(next.event),
  };
  const related = { message: `${inWords(member)}`, source: member.source, system: 0 } as const;
  const fixes = signed(next.member, next.member.alteration);
  return problemIn({ code: 'accidental-ends', at: next.member.source, slots, bar: next.event.bar, fixes, related });
}

export const accidentalEnds = overSystems('accidental-ends', (view) => {
  if (view.facts.practice === 'bar') return [];
  return view.score.voices.flatMap(({ voice, events }) =>
    events.flatMap((event, index) =>
      !isSounding(event)
        ? []
        : event.members.flatMap((member) => {
            if (accidentalOf(member) === undefined) return [];
            const next = nextOnLine(events, index, member);
            if (next === undefined || accidentalOf(next.member) !== undefined || next.member.tiedFrom) return [];
            if (next.member.alteration === member.alteration) return [];
            return [endIn(view, voice, { event, member }, next)];
          }),
    ),
  );
});

// ─── meanwhile in another voice ──────────────────────────────────────────────────────────────────────────────────

/** How long an accidental is in force: through the repetitions of its note, under `group` through its beam. */
function reach(view: View, line: Line, note: Sounding): Time {
  let end = note.end;
  for (const next of line) {
    if (compare(next.onset, note.onset) <= 0) continue;
    const isHeld =
      view.facts.practice === 'group'
        ? note.event.beam !== undefined && next.event.beam === note.event.beam
        : equal(next.onset, end) && next.member.midi === note.member.midi;
    if (isHeld && compare(next.end, end) > 0) end = next.end;
  }
  return end;
}

export const sharedLine = overSystems('accidental-other-voice', (view) => {
  if (view.facts.practice === 'bar') return [];
  const lines = notesOver(view);
  const name = ({ voice }: Sounding): string => view.facts.voices[voice] ?? '';
  return lines.flatMap((line, index) =>
    line.flatMap((note) => {
      if (accidentalOf(note.member) === undefined) return [];
      const end = reach(view, line, note);
      const others = notesOf(view.score).filter((_, other) => other !== index);
      return others.flatMap((other) =>
        other
          .filter(
            ({ onset, member }) =>
              compare(note.onset, onset) <= 0 &&
              compare(onset, end) < 0 &&
              member.stave === note.member.stave &&
              isOnLineOf(member, note.member) &&
              accidentalOf(member) === undefined &&
              !member.tiedFrom &&
              member.alteration !== note.member.alteration,
          )
          .map((struck) => {
            const slots = {
              voice: name(struck),
              note: inWords(struck.member),
              against: inWords(note.member),
              other: name(note),
              rule: view.facts.practice,
            };
            const { alteration } = note.member;
            return problemIn({
              code: 'accidental-other-voice',
              at: struck.member.source,
              slots,
              bar: struck.at.bar,
              fixes: [...signed(struck.member, struck.member.alteration), ...signed(struck.member, alteration)],
              related: {
                message: `${inWords(note.member)} in ${name(note)}`,
                source: note.member.source,
                system: note.at.system,
              },
            });
          }),
      );
    }),
  );
});
