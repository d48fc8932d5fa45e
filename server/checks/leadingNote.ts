/**
 * Leading notes without their sign. Sources before about 1700 leave the sharp of the leading note at a cadence to the
 * player (common practice of musica ficta); an edition adds it as the editor's.
 *
 * A cadence here: the bass falls a fifth, rises a fourth or falls a whole tone to a note of a beat or more on the first beat
 * or in the middle of a bar, while a voice above goes from the same note down a whole tone, and up again to rest on it: the
 * formula of the discant at a close. Other ways to the final are too common within a phrase to be told.
 */
import type { Fix } from '../../grammar/findings/finding';
import { beatIn, countTo, lastTo, type Passage } from './lines';
import { editorsSign, inWords } from './pitches';
import type { Line, Sounding } from './sounding';
import { alongPassages, type Facts, type Look, problemIn, type SystemProblem } from './systems';

const lengthOf = ({ onset, end }: Sounding): number => end - onset;
const semitones = (from: Sounding, to: Sounding): number => to.midi - from.midi;
const steps = (from: Sounding, to: Sounding): number => to.step - from.step;

/** A bass step to a final, in steps and semitones. A fall of a semitone closes on its fourth degree and wants no leading note. */
const TO_FINAL: ReadonlyMap<number, number> = new Map([
  [-4, -7],
  [3, 5],
  [-1, -2],
]);

const isClose = (from: Sounding, to: Sounding): boolean =>
  from.end === to.onset && TO_FINAL.get(steps(from, to)) === semitones(from, to);

/** A bass that goes on down the scale does not close. */
const goesOnDown = (from: Sounding, to: Sounding, next: Sounding | undefined): boolean =>
  steps(from, to) === -1 && next !== undefined && steps(to, next) === -1;

/** Begins a bar or its second half, and lasts a beat or more. */
function isRest(passage: Passage, note: Sounding): boolean {
  const beat = beatIn(passage, note);
  if (lengthOf(note) < note.bar.beat) return false;
  return beat === 0 || (note.bar.beats === 4 && beat === 2);
}

/** A whole tone below the final, half a beat or more, and a step up to rest on it. */
const isUnsigned = (leading: Sounding, final: Sounding): boolean =>
  leading.end === final.onset &&
  lengthOf(leading) * 2 >= final.bar.beat &&
  steps(leading, final) === 1 &&
  semitones(leading, final) === 2 &&
  lengthOf(final) >= lengthOf(leading);

const samePitchClass = (a: Sounding, b: Sounding): boolean =>
  a.member.spelling.letter === b.member.spelling.letter && a.member.alteration === b.member.alteration;

/** Another voice has the raised form meanwhile. */
const isRaisedElsewhere = (lines: readonly Line[], leading: Sounding): boolean =>
  lines.some((line) =>
    lastTo(line, leading.end).some(
      ({ member, onset, end }) =>
        member.spelling.letter === leading.member.spelling.letter &&
        member.alteration > leading.member.alteration &&
        onset < leading.end &&
        leading.onset < end,
    ),
  );

const raised = ({ member, ...note }: Sounding): Sounding => ({
  ...note,
  member: { ...member, alteration: member.alteration + 1 },
});

const RAISING: Readonly<Record<number, string>> = { [-1]: 'n', 0: '#' };

function fixesOf({ member }: Sounding): readonly Fix[] {
  const sign = RAISING[member.alteration];
  const { text, editors, cautionary } = member.spelling;
  const isOpen = editors === undefined && cautionary === undefined && text !== '';
  return sign === undefined || !isOpen ? [] : [editorsSign(member, sign)];
}

/** The unsigned note before the one that arrives at the final with the bass. */
function arrivalIn(line: Line, final: Sounding): Sounding | undefined {
  const index = countTo(line, final.onset) - 1;
  const [prepared, leading, arrival] = [line[index - 2], line[index - 1], line[index]];
  if (prepared === undefined || leading === undefined || arrival === undefined) return undefined;
  if (arrival.onset !== final.onset || !samePitchClass(arrival, final)) return undefined;
  const returns = prepared.end === leading.onset && prepared.midi === arrival.midi;
  return returns && isUnsigned(leading, arrival) ? leading : undefined;
}

function told({ voices }: Facts, leading: Sounding, final: Sounding): SystemProblem {
  const { bar, member } = leading;
  const slots = {
    voice: voices[leading.voice] ?? '',
    final: inWords(final.member),
    shown: inWords(member),
    expected: inWords(raised(leading).member),
  };
  const fixes = fixesOf(leading);
  const { system } = bar;
  return problemIn({ code: 'leading-note-unsigned', at: member.source, system, slots, bars: [bar, bar], fixes });
}

/** Whether the bass closes on a note. */
function isFinal(passage: Passage, bass: Line, index: number): boolean {
  const [before, final] = [bass[index - 1], bass[index]];
  if (before === undefined || final === undefined || !final.bar.own || !isClose(before, final)) return false;
  if (!isRest(passage, final) || before.bar.strain !== final.bar.strain) return false;
  return !goesOnDown(before, final, bass[index + 1]);
}

/** What voices above do as the bass closes on a note. */
function closesOn({ melodies }: Passage, facts: Facts, final: Sounding): SystemProblem[] {
  return melodies.slice(0, -1).flatMap((line) => {
    const leading = arrivalIn(line, final);
    return leading === undefined || isRaisedElsewhere(melodies, leading) ? [] : [told(facts, leading, final)];
  });
}

export const leadingNotes: Look = alongPassages((passage, facts) => {
  const bass = passage.melodies.at(-1) ?? [];
  const found: SystemProblem[] = [];
  for (let index = 0; index < bass.length; index++) {
    // Few notes of a bass are closes.
    if (isFinal(passage, bass, index)) found.push(...closesOn(passage, facts, bass[index] as Sounding));
  }
  return found;
});
