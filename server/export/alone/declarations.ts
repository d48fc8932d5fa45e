/** Statements of a file of which one choice alone is left. */
import { parseFile } from '../../../grammar/parse';
import { stretchIn } from '../../../grammar/place';
import { firstOf } from '../../../grammar/statements/read';
import type { Block, Placed, Statement, StatementTree } from '../../../grammar/tree';
import { type UseKind, type Uses, usesIn } from '../../checks/uses';
import { edited, type TextChange } from '../../document/edits';
import { lineage } from '../../readings/choices';
import type { Score } from '../../score/score';
import { shapesOfSign } from '../../score/signs';
import { eventsOf, marksOfEvent } from '../../score/walk';
import { cleared, endOfLines, linesOf } from './stretches';

/**
 * The text without what spoke of other choices: other readings, what readings say of places, links, and people, sources and
 * notes to which nothing refers any longer. What nothing referred to before stays.
 */
export function withoutOthers(score: Score, given: string): string {
  const before = usesIn(score.tree);
  const readings = readingsLeft(score);
  const isChoice = sourcesOf(score);
  let text = withAccidentals(score, given);
  for (;;) {
    const tree = parseFile(text);
    const after = usesIn(tree);
    const isIdle = (name: string, kinds: readonly UseKind[]): boolean =>
      cites(before, kinds, name) && !cites(after, kinds, name);
    const next = edited(
      text,
      tree.blocks.flatMap((block) =>
        block.statements.flatMap((placed) => changesOf(block, placed, text, { readings, isChoice, isIdle })),
      ),
    );
    if (next === text) return text;
    text = next;
  }
}

interface Left {
  readonly readings: ReadonlySet<string>;
  readonly isChoice: (source: string) => boolean;
  readonly isIdle: (name: string, kinds: readonly UseKind[]) => boolean;
}

const OF_SOURCES: readonly UseKind[] = ['option', 'limit', 'taken', 'witness'];

function changesOf(block: Block, placed: Placed<StatementTree>, text: string, left: Left): TextChange[] {
  const { statement } = placed.tree;
  if (isOthers(statement, left)) return cleared(text, linesOf(block, placed));
  if (statement.keyword !== 'reading') return [];
  const saidOfPlaces = statement.clauses.filter(({ name }) => name === 'at');
  return cleared(
    text,
    saidOfPlaces.map((clause) => stretchIn(block, placed, clause)),
  );
}

function isOthers({ keyword, args }: Statement, { readings, isChoice, isIdle }: Left): boolean {
  const name = firstOf(args, 'name')?.text ?? '';
  switch (keyword) {
    case 'link':
      return true;
    case 'reading':
      return !readings.has(name);
    case 'source':
    case 'hand':
      return !isChoice(name) && isIdle(name, OF_SOURCES);
    case 'note':
      return isIdle(name, ['note']);
    case 'editor':
      return isIdle(name, ['editor']);
    default:
      return false;
  }
}

/** Who cites a layer cites its source. */
const cites = ({ names }: Uses, kinds: readonly UseKind[], name: string): boolean =>
  kinds.some((kind) => [...(names.get(kind) ?? [])].some((one) => one === name || one.split('.')[0] === name));

/** The first source, which is the main text; that of the choice, with its layers. */
function sourcesOf({ environment, choice }: Score): (name: string) => boolean {
  const kept = new Set([environment.sources[0]?.name, ...choice.labels.map((label) => label.split('.')[0])]);
  return (name) => kept.has(name.split('.')[0]);
}

/** The reading and those on which it is built; all, where the names of signs are known by their tables alone. */
function readingsLeft(score: Score): ReadonlySet<string> {
  const { environment, choice } = score;
  const own = lineage(environment, choice.name).map(({ name }) => name);
  const fewer = { ...environment, readings: environment.readings.filter(({ name }) => own.includes(name)) };
  const isOther = (name: string): boolean =>
    shapesOfSign(name, environment).shapes.join() !== shapesOfSign(name, fewer).shapes.join();
  return new Set(signNames(score).some(isOther) ? environment.readings.map(({ name }) => name) : own);
}

function signNames({ pieces }: Score): string[] {
  const forms = pieces.flatMap((piece) =>
    [...eventsOf(piece)].flatMap(({ event }) => marksOfEvent(event).map(({ form }) => form)),
  );
  return [...new Set(forms.filter(({ type }) => type === 'sign').map(({ name }) => name))];
}

/** The practice of accidentals of the choice, stated for the file. */
function withAccidentals({ environment, choice }: Score, text: string): string {
  if (choice.accidentals === environment.accidentals) return text;
  const { blocks } = parseFile(text);
  const [stated] = blocks.flatMap((block) =>
    block.statements.flatMap((placed) => {
      const { keyword, args } = placed.tree.statement;
      const word = keyword === 'accidentals' ? firstOf(args, 'word') : undefined;
      return word === undefined ? [] : [stretchIn(block, placed, word)];
    }),
  );
  if (stated !== undefined) {
    return edited(text, [{ offset: stated.start, length: stated.end - stated.start, text: choice.accidentals }]);
  }
  const [head] = blocks;
  const first = head?.statements[0];
  const at = head === undefined || first === undefined ? 0 : endOfLines(text, head, first);
  return edited(text, [{ offset: at, length: 0, text: `\naccidentals ${choice.accidentals}` }]);
}
