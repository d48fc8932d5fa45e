/**
 * Leading notes without their sign. Sources before about 1700 leave the sharp of the leading note at a cadence to the
 * player (common practice of musica ficta); an edition adds it as the editor's.
 *
 * A cadence here: the bass falls a fifth, rises a fourth or falls a whole tone to a note of a beat or more on the first beat
 * or in the middle of a bar, while a voice above goes from the same note down a whole tone, and up again to rest on it: the
 * formula of the discant at a close. Other ways to the final are too common within a phrase to be told.
 */
import type { Fix } from '../../grammar/findings/finding';
import { compare, equal, multiply, subtract, type Time, time, ZERO } from '../../grammar/time';
import {
  beatIn,
  countTo,
  inWords,
  isParted,
  type Line,
  lastTo,
  melodiesOver,
  positionOf,
  type Sounding,
} from './lines';
import { overSystems, problemIn, type SystemProblem, type View } from './systems';

const lengthOf = ({ onset, end }: Sounding): Time => subtract(end, onset);
const semitones = (from: Sounding, to: Sounding): number => to.member.midi - from.member.midi;
const steps = (from: Sounding, to: Sounding): number => positionOf(to.member) - positionOf(from.member);

const TWO = time(2);

/** A bass step to a final, as `steps semitones`. A fall of a semitone closes on its fourth degree and wants no leading note. */
const TO_FINAL: ReadonlySet<string> = new Set(['-4 -7', '3 5', '-1 -2']);

const isClose = (from: Sounding, to: Sounding): boolean =>
  equal(from.end, to.onset) && TO_FINAL.has(`${steps(from, to)} ${semitones(from, to)}`);

/** A bass that goes on down the scale does not close. */
const goesOnDown = (from: Sounding, to: Sounding, next: Sounding | undefined): boolean =>
  steps(from, to) === -1 && next !== undefined && steps(to, next) === -1;

/** Begins a bar or its second half, and lasts a beat or more. */
function isRest(view: View, note: Sounding): boolean {
  const place = beatIn(view, note);
  const meter = view.score.bars[note.at.bar]?.meter;
  if (place === undefined || meter === undefined || !place.on || compare(lengthOf(note), place.length) < 0)
    return false;
  return place.beat === 0 || (meter.beats === 4 && place.beat === 2);
}

/** A whole tone below the final, half a beat or more, and a step up to rest on it. */
const isUnsigned = (view: View, leading: Sounding, final: Sounding): boolean =>
  equal(leading.end, final.onset) &&
  compare(multiply(lengthOf(leading), TWO), beatIn(view, final)?.length ?? ZERO) >= 0 &&
  steps(leading, final) === 1 &&
  semitones(leading, final) === 2 &&
  compare(lengthOf(final), lengthOf(leading)) >= 0;

const samePitchClass = (a: Sounding, b: Sounding): boolean =>
  a.member.spelling.letter === b.member.spelling.letter && a.member.alteration === b.member.alteration;

/** Another voice has the raised form meanwhile. */
const isRaisedElsewhere = (lines: readonly Line[], leading: Sounding): boolean =>
  lines.some((line) =>
    lastTo(line, leading.end).some(
      ({ member, onset, end }) =>
        member.spelling.letter === leading.member.spelling.letter &&
        member.alteration > leading.member.alteration &&
        compare(onset, leading.end) < 0 &&
        compare(leading.onset, end) < 0,
    ),
  );

const raised = ({ member, ...note }: Sounding): Sounding => ({
  ...note,
  member: { ...member, alteration: member.alteration + 1 },
});

const RAISING: Readonly<Record<number, string>> = { [-1]: 'n', 0: '#' };

/** Adds the editor's sign after letter and accidental. */
function fixesOf({ member }: Sounding): readonly Fix[] {
  const sign = RAISING[member.alteration];
  const { text, accidental, editors, cautionary } = member.spelling;
  if (sign === undefined || editors !== undefined || cautionary !== undefined || text === '') return [];
  const pos = member.source.pos + 1 + (accidental?.length ?? 0);
  return [{ title: `add the editor's ${sign}`, edits: [{ pos, len: 0, text: `[${sign}]` }] }];
}

/** The unsigned note before the one that arrives at the final with the bass. */
function arrivalIn(view: View, line: Line, final: Sounding): Sounding | undefined {
  const index = countTo(line, final.onset) - 1;
  const [prepared, leading, arrival] = [line[index - 2], line[index - 1], line[index]];
  if (prepared === undefined || leading === undefined || arrival === undefined) return undefined;
  if (!equal(arrival.onset, final.onset) || !samePitchClass(arrival, final)) return undefined;
  const returns = equal(prepared.end, leading.onset) && prepared.member.midi === arrival.member.midi;
  return returns && isUnsigned(view, leading, arrival) ? leading : undefined;
}

function told(view: View, leading: Sounding, final: Sounding): SystemProblem {
  const { at, member } = leading;
  const slots = {
    voice: view.facts.voices[leading.voice] ?? '',
    final: inWords(final.member),
    shown: inWords(member),
    expected: inWords(raised(leading).member),
  };
  const fixes = fixesOf(leading);
  return problemIn({
    code: 'leading-note-unsigned',
    at: member.source,
    system: at.system,
    slots,
    bars: [at, at],
    fixes,
  });
}

export const leadingNotes = overSystems('leading-note-unsigned', (view) => {
  const lines = melodiesOver(view);
  const bass = lines.at(-1) ?? [];
  return bass.flatMap((final, index) => {
    const before = bass[index - 1];
    if (before === undefined || final.at.system !== 0 || !isClose(before, final) || !isRest(view, final)) return [];
    if (isParted(view, before.at, final.at) || goesOnDown(before, final, bass[index + 1])) return [];
    return lines.slice(0, -1).flatMap((line) => {
      const leading = arrivalIn(view, line, final);
      return leading === undefined || isRaisedElsewhere(lines, leading) ? [] : [told(view, leading, final)];
    });
  });
});
