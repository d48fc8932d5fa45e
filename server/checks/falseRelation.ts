/** A note against its own chromatic form in another voice, at once or one directly after the other within a beat. */
import { accidentalOf } from '../score/pitch';
import { beatIn, countTo, firstOfLast, isMixed, lastTo, OCTAVE, type Passage } from './lines';
import { inWords } from './pitches';
import type { Line, Sounding } from './sounding';
import { alongPassages, type Facts, type Look, problemIn, type SystemProblem } from './systems';

const isContrary = (a: Sounding, b: Sounding): boolean =>
  (a.step - b.step) % OCTAVE === 0 && a.member.alteration !== b.member.alteration;

/** It still sounds when the other is struck. */
const soundsAt = (note: Sounding, later: Sounding): boolean => note.onset <= later.onset && later.onset < note.end;

function isSameBeat(passage: Passage, note: Sounding, later: Sounding): boolean {
  const [first, second] = [beatIn(passage, note), beatIn(passage, later)];
  return (
    note.bar === later.bar && first !== undefined && second !== undefined && Math.floor(first) === Math.floor(second)
  );
}

/** The voice itself makes the chromatic step: it had the other form just before, or goes on to the later form. */
const isStepOf = (line: Line, note: Sounding, form: Sounding): boolean =>
  lastTo(line, note.end).some(
    (one) =>
      (one.end === note.onset || one.onset === note.end) &&
      (one.step - form.step) % OCTAVE === 0 &&
      one.member.alteration === form.member.alteration,
  );

/** The editor has looked at it. */
const isDecided = ({ member }: Sounding): boolean =>
  member.spelling.editors !== undefined || member.spelling.cautionary !== undefined;

/** Told better by the line that two voices share: see `sharedLine`. */
const isOnOneLine = ({ practice }: Facts, a: Sounding, b: Sounding): boolean =>
  practice !== 'bar' && a.step === b.step && a.member.stave === b.member.stave && accidentalOf(b.member) === undefined;

/** A passage with what concerns the whole of it. */
interface Given {
  readonly passage: Passage;
  readonly facts: Facts;
}

function standsAgainst({ passage, facts }: Given, own: Line, later: Sounding, line: Line, note: Sounding): boolean {
  if (!isContrary(note, later) || isDecided(note) || isOnOneLine(facts, note, later)) return false;
  if (soundsAt(note, later)) return true;
  return (
    note.end === later.onset &&
    isSameBeat(passage, note, later) &&
    !isStepOf(own, later, note) &&
    !isStepOf(line, note, later)
  );
}

function against(given: Given, own: Line, later: Sounding): Sounding | undefined {
  for (const line of given.passage.lines) {
    if (line === own) continue;
    const count = countTo(line, later.onset);
    for (let index = firstOfLast(count); index < count; index++) {
      const note = line[index] as Sounding;
      if (!standsAgainst(given, own, later, line, note)) continue;
      if (note.bar.strain === later.bar.strain) return note;
      break;
    }
  }
  return undefined;
}

function told({ voices }: Facts, later: Sounding, other: Sounding): SystemProblem {
  const name = ({ voice }: Sounding): string => voices[voice] ?? '';
  const slots = {
    note: inWords(later.member),
    voice: name(later),
    against: inWords(other.member),
    other: name(other),
  };
  const { system } = other.bar;
  const related = { message: `${inWords(other.member)} in ${name(other)}`, source: other.member.source, system };
  return problemIn({ code: 'false-relation', at: later.member.source, slots, bar: later.bar.bar, related });
}

export const falseRelation: Look = alongPassages((passage, facts) => {
  const { lines, mixed } = passage;
  if (mixed === 0) return [];
  return lines.flatMap((own) =>
    own.flatMap((later) => {
      if (!isMixed(passage, later) || !later.bar.own || isDecided(later)) return [];
      const other = against({ passage, facts }, own, later);
      // Of two struck together the one in the higher voice tells it.
      if (other === undefined || (other.onset === later.onset && other.voice < later.voice)) return [];
      return [told(facts, later, other)];
    }),
  );
});
