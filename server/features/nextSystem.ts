/** The system that comes after the one at the caret, with all its lanes, ready to be typed in. */
import { firstOf } from '../../grammar/statements/read';
import type { Block, LaneTree, PlacedLane } from '../../grammar/tree';
import type { Environment } from '../score/environment';
import type { Project } from '../workspace/project';
import { textEnd } from './outline';
import { positionOfOffset } from './place';
import type { SnippetOffer } from './protocol';

interface LaneHead {
  readonly name: string;
  readonly indent: number;
  /** Changes with which the voice goes on where it was: it is on another stave, its stems go another way. */
  readonly goesOn: string;
}

const LANE_INDENT = 2;
/** Figures and syllables stand deeper than their voice. */
const SUB_LANE_INDENT = 4;

/**
 * At the beginning of the line below the system in which an offset stands, or the last one before it, or else below the whole
 * file; that line may have to be made first. A snippet in which each lane is a place to type in.
 */
export function nextSystem({ tree, environment }: Project, offset: number): SnippetOffer {
  const system = tree.blocks.filter((block) => block.kind === 'system' && block.offset <= offset).at(-1);
  const last = system === undefined ? tree.text.trimEnd().length : textEnd(system);
  const position = { line: positionOfOffset(tree, last).line + 1, character: 0 };
  const snippet =
    system === undefined ? `\n${systemText(environment.voices.map(voiceHead))}` : systemLike(system, environment);
  return { position, snippet: `${snippet}\n` };
}

const voiceHead = ({ name }: { readonly name: string }): LaneHead => ({ name, indent: LANE_INDENT, goesOn: '' });

/** The lanes of a system, but for what other witnesses have there: their lanes and those that stand under them. */
function headsOf({ lanes }: Block, { voices }: Environment): LaneHead[] {
  let isOfWitness = false;
  return lanes.flatMap(({ name, tree, witness }: PlacedLane) => {
    if (tree.kind === 'lane') isOfWitness = witness !== undefined;
    if (isOfWitness) return [];
    return [
      {
        name: name.text,
        indent: tree.kind === 'lane' ? LANE_INDENT : SUB_LANE_INDENT,
        goesOn: goingOn(tree, voices.find((voice) => voice.name === name.text)?.stems),
      },
    ];
  });
}

/** `loose` or `free`: how the bars of a system are measured is said of each. */
const KINDS: ReadonlySet<string> = new Set(['loose', 'free']);

function kindOf({ statements: [head] }: Block): string | undefined {
  const word = head && firstOf(head.tree.statement.args, 'word')?.text;
  return word !== undefined && KINDS.has(word) ? word : undefined;
}

/** Where a voice is at the end of its lane, as changes. @param usual the way of its stems as declared */
function goingOn({ segments }: LaneTree, usual: string | undefined): string {
  let staves = 0;
  let stems = usual;
  for (const item of segments.flatMap(({ items }) => items)) {
    if (item.kind !== 'change') continue;
    const { word, args } = item.change;
    if (word === 'home') staves = 0;
    else if (word === 'up' || word === 'down') staves += word === 'up' ? -1 : 1;
    else if (word === 'stems') {
      const way = firstOf(args, 'word')?.text;
      stems = way === 'up' || way === 'down' ? way : usual;
    }
  }
  const moves = (staves < 0 ? '(up) ' : '(down) ').repeat(Math.abs(staves));
  return stems === usual || stems === undefined ? moves : `${moves}(stems ${stems}) `;
}

/** The text of a system with the lanes that another has, all empty, as a snippet. */
export const systemLike = (system: Block, environment: Environment): string =>
  systemText(headsOf(system, environment), kindOf(system));

/** The text of a system whose lanes are empty, as a snippet. */
function systemText(heads: readonly LaneHead[], kind?: string): string {
  const width = Math.max(0, ...heads.map(({ name, indent }) => name.length + indent));
  const lanes = heads.map(({ name, indent, goesOn }, index) => {
    const begin = `${' '.repeat(indent)}${name}`.padEnd(width);
    return `${begin} | \${${index + 1}${goesOn === '' ? '' : `:${goesOn}`}}`;
  });
  return [kind === undefined ? 'system' : `system ${kind}`, ...lanes].join('\n');
}
