/** Which notes each bar strikes, by their names: what a tuning with few keys has to hold. */
import { keeping } from '../../grammar/keeping';
import type { Source, SystemScore } from '../score/score';
import { placeOf } from '../tuning/fifths';

/** A note without octave, by its place on the line of fifths. */
export interface NoteUse {
  /** How often each bar of the system strikes it; bars that do not are left out. */
  readonly bars: Map<number, number>;
  /** Where it stands first. */
  readonly first: Source;
}

/** What a system strikes, small notes too. It holds no event, since it is kept as long as its system. */
export const usesOf = keeping(({ voices }: SystemScore): ReadonlyMap<number, NoteUse> => {
  const uses = new Map<number, NoteUse>();
  for (const { events } of voices) {
    for (const { members, bar } of events) {
      for (const { spelling, alteration, tiedFrom, source } of members) {
        if (tiedFrom) continue;
        const place = placeOf({ letter: spelling.letter, alteration });
        const use = uses.get(place);
        if (use === undefined) uses.set(place, { bars: new Map([[bar, 1]]), first: source });
        else use.bars.set(bar, (use.bars.get(bar) ?? 0) + 1);
      }
    }
  }
  return uses;
});
