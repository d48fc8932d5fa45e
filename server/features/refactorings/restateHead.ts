/** A system's head made to say the clefs and signatures that it takes over. */
import { CodeActionKind } from 'vscode-languageserver-types';
import { stretchIn } from '../../../grammar/place';
import { allOf, clausesOf } from '../../../grammar/statements/read';
import type { Statement } from '../../../grammar/tree';
import { clefsText } from '../../../grammar/vocabulary/clefs';
import type { Carry } from '../../score/carry';
import { keyText } from '../../score/pitchNames';
import type { Project } from '../../workspace/project';
import { saidIn } from '../nodes';
import { carryInto, leavesMusic } from './music';
import { type Offer, put } from './refactoring';

export const restateHead: Offer = ({ project, here }) => {
  const [head] = here.block.statements;
  if (here.block.kind !== 'system' || head === undefined) return undefined;
  const inForce = carryInto(project, here.blockIndex);
  if (inForce === undefined) return undefined;
  const clauses = [
    ...clefsLeftOut(project, head.tree.statement, inForce),
    ...keysLeftOut(project, head.tree.statement, inForce),
  ];
  if (clauses.length === 0) return undefined;
  const { end } = stretchIn(here.block, head, saidIn(head.tree.statement));
  const changes = [put(end, `  ${clauses.join('  ')}`)];
  // A lane may change at its very beginning what the head would say.
  if (!leavesMusic(project, here.blockIndex, changes)) return undefined;
  return { title: `Restate the head: ${clauses.join('  ')}`, kind: CodeActionKind.RefactorRewrite, changes };
};

function clefsLeftOut({ environment: { staves } }: Project, statement: Statement, { clefs }: Carry): string[] {
  const said = new Set(clausesOf(statement, 'clef').flatMap(({ args }) => allOf(args, 'name').map(({ text }) => text)));
  return staves.flatMap(({ name }, index) => {
    const drawn = clefs[index] ?? [];
    return said.has(name) || drawn.length === 0 ? [] : [`${name} ${clefsText(drawn)}`];
  });
}

/** One clause where all staves bear the same signature, one for each otherwise. */
function keysLeftOut({ environment: { staves } }: Project, statement: Statement, { keys }: Carry): string[] {
  if (clausesOf(statement, 'key').length > 0) return [];
  const texts = staves.map((_, index) => keyText(keys[index] ?? []));
  const [first = ''] = texts;
  if (texts.every((text) => text === first)) return first === '' ? [] : [`key ${first}`];
  return staves.map(({ name }, index) => `key ${name} ${texts[index] || 'none'}`);
}
