/** A note against its own chromatic form in another voice, at once or one directly after the other within a beat. */
import { compare, equal } from '../../grammar/time';
import { accidentalOf } from '../score/pitch';
import { beatIn, inWords, isParted, type Line, lastTo, notesOver, type Sounding } from './lines';
import { overSystems, problemIn, type View } from './systems';

const isContrary = (a: Sounding, b: Sounding): boolean =>
  a.member.spelling.letter === b.member.spelling.letter && a.member.alteration !== b.member.alteration;

/** It still sounds when the other is struck. */
const soundsAt = (note: Sounding, later: Sounding): boolean =>
  compare(note.onset, later.onset) <= 0 && compare(later.onset, note.end) < 0;

function isSameBeat(view: View, note: Sounding, later: Sounding): boolean {
  const [first, second] = [beatIn(view, note), beatIn(view, later)];
  return (
    first !== undefined &&
    first.beat === second?.beat &&
    note.at.system === later.at.system &&
    note.at.bar === later.at.bar
  );
}

/** The voice itself makes the chromatic step: it had the other form just before, or goes on to the later form. */
function isStepOf(line: Line, note: Sounding, form: Sounding): boolean {
  const neighbours = lastTo(line, note.end).filter((one) => equal(one.end, note.onset) || equal(one.onset, note.end));
  return neighbours.some(
    ({ member }) =>
      member.spelling.letter === form.member.spelling.letter && member.alteration === form.member.alteration,
  );
}

/** The editor has looked at it. */
const isDecided = ({ member }: Sounding): boolean =>
  member.spelling.editors !== undefined || member.spelling.cautionary !== undefined;

/** Told better by the line that two voices share: see `sharedLine`. */
const isOnOneLine = (view: View, a: Sounding, b: Sounding): boolean =>
  view.facts.practice !== 'bar' &&
  a.member.octave === b.member.octave &&
  a.member.stave === b.member.stave &&
  accidentalOf(b.member) === undefined;

function against(view: View, lines: readonly Line[], own: Line, later: Sounding): Sounding | undefined {
  for (const line of lines) {
    if (line === own) continue;
    const found = lastTo(line, later.onset).find((note) => {
      if (!isContrary(note, later) || isDecided(note) || isOnOneLine(view, note, later)) return false;
      if (soundsAt(note, later)) return true;
      return (
        equal(note.end, later.onset) &&
        isSameBeat(view, note, later) &&
        !isStepOf(own, later, note) &&
        !isStepOf(line, note, later)
      );
    });
    if (found !== undefined && !isParted(view, found.at, later.at)) return found;
  }
  return undefined;
}

/** Letters that sound in more than one form: no others can stand against themselves. */
function mixedLetters(lines: readonly Line[]): ReadonlySet<string> {
  const forms = new Map<string, number>();
  const mixed = new Set<string>();
  for (const line of lines) {
    for (const { member } of line) {
      const { letter } = member.spelling;
      if ((forms.get(letter) ?? member.alteration) !== member.alteration) mixed.add(letter);
      forms.set(letter, member.alteration);
    }
  }
  return mixed;
}

export const falseRelation = overSystems('false-relation', (view) => {
  const lines = notesOver(view);
  const mixed = mixedLetters(lines);
  const name = ({ voice }: Sounding): string => view.facts.voices[voice] ?? '';
  return lines.flatMap((own) =>
    own.flatMap((later) => {
      if (!mixed.has(later.member.spelling.letter) || later.at.system !== 0 || isDecided(later)) return [];
      const other = against(view, lines, own, later);
      // Of two struck together the one in the higher voice tells it.
      if (other === undefined || (equal(other.onset, later.onset) && other.voice < later.voice)) return [];
      const slots = {
        note: inWords(later.member),
        voice: name(later),
        against: inWords(other.member),
        other: name(other),
      };
      const { system } = other.at;
      const related = { message: `${inWords(other.member)} in ${name(other)}`, source: other.member.source, system };
      return [problemIn({ code: 'false-relation', at: later.member.source, slots, bar: later.at.bar, related })];
    }),
  );
});
