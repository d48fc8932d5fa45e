/** Which stops sound with a note: those of the manual on which it is played. */
import { compare } from '../../grammar/time';
import { manualsOf } from '../instrument/instrument';
import type { Environment } from '../score/environment';
import type { Piece } from '../score/score';
import { changesOf } from '../score/walk';
import type { SoundingNote } from './sounding';

/** The manual on which a note is played; undefined where none is named. */
export function manualNamesIn(piece: Piece): (note: SoundingNote) => string | undefined {
  const changes = [...changesOf(piece)].flatMap(({ change: { manual }, onset }) =>
    manual === undefined ? [] : [{ ...manual, onset }],
  );
  return ({ voice, event }) => {
    const { onset } = event.from[0].placed;
    return changes.findLast((one) => one.voice === voice && compare(one.onset, onset) <= 0)?.name;
  };
}

/** One stop of eight feet, where nothing is said. */
const PLAIN: readonly number[] = [8];

/** The feet of a note's stops: of the manual named, else of the first. */
export function stopsIn(environment: Environment, piece: Piece): (note: SoundingNote) => readonly number[] {
  const manuals = new Map(manualsOf(environment).map(({ name, stops }) => [name, stops]));
  const [first = PLAIN] = manuals.values();
  const nameOf = manualNamesIn(piece);
  return (note) => manuals.get(nameOf(note) ?? '') ?? first;
}
