/** Clefs at the head of a system that gainsay what the end of the system before announced. */
import { replacing } from '../../grammar/findings/fixes';
import { clausesOf, firstOf } from '../../grammar/statements/read';
import { equal } from '../../grammar/time';
import type { Span, StatementTree } from '../../grammar/tree';
import { clefsText } from '../../grammar/vocabulary/clefs';
import type { StateChange, SystemScore } from '../score/score';
import { type Look, problemIn, type SystemProblem } from './systems';

/** A clef as the head of a system states it. */
interface HeadClef extends Span {
  readonly stave: string;
  readonly text: string;
}

const headClefs = (head: StatementTree | undefined): HeadClef[] =>
  clausesOf(head?.statement ?? { clauses: [] }, 'clef').flatMap(({ args }): HeadClef[] => {
    const [stave, clef] = [firstOf(args, 'name'), firstOf(args, 'clef')];
    if (stave === undefined || clef === undefined) return [];
    return [{ stave: stave.text, text: clefsText(clef.clefs), pos: clef.pos, len: clef.len }];
  });

/** Clefs that a lane draws at the very end of a system. */
const announced = (score: SystemScore): StateChange[] =>
  score.changes.filter(
    (change) => change.clefs !== undefined && change.source !== undefined && equal(change.onset, score.duration),
  );

export const clefsAtHeads: Look = ({ before, head, facts }) => {
  const promised = before === undefined ? [] : announced(before);
  if (promised.length === 0) return [];
  const heads = headClefs(head);
  return promised.flatMap(({ stave, clefs, source }): SystemProblem[] => {
    const name = facts.staves[stave ?? -1]?.name;
    const text = clefsText(clefs ?? []);
    const here = heads.find((one) => one.stave === name);
    if (here === undefined || here.text === text || source === undefined) return [];
    return [
      problemIn({
        code: 'clef-change-at-head',
        at: { lane: -1, statement: 0, pos: here.pos, len: here.len },
        slots: { stave: here.stave, head: here.text, announced: text },
        fixes: [replacing(here, text)],
        related: { message: `${text} is announced here`, source, system: -1 },
      }),
    ];
  });
};
