/** The outline of a file: what it declares, then its movements, leaves, sections, systems and bars. */
import { type DocumentSymbol, SymbolKind, type WorkspaceSymbol } from 'vscode-languageserver-types';
import { stretchIn } from '../../grammar/place';
import type { Block, FileTree } from '../../grammar/tree';
import type { GivenKind } from '../checks/uses';
import type { NamedTree } from '../document/absolute';
import { barsFromTo } from '../score/barsInWords';
import type { ScoreSystem } from '../score/score';
import type { Project } from '../workspace/project';
import { type NameAt, namesIn } from './names';
import { stretchesOf, textEnd } from './outline';
import { rangeOfOffsets } from './place';

/** How what is declared is shown; what is not here is shown where it stands in the music, or not at all. */
const kinds: Readonly<Partial<Record<GivenKind, SymbolKind>>> = {
  witness: SymbolKind.File,
  layer: SymbolKind.File,
  editor: SymbolKind.Variable,
  reading: SymbolKind.Interface,
  instrument: SymbolKind.Object,
  manual: SymbolKind.Property,
  stave: SymbolKind.Array,
  voice: SymbolKind.Field,
  table: SymbolKind.Struct,
  temperament: SymbolKind.Struct,
  note: SymbolKind.String,
};

const words: Readonly<Partial<Record<GivenKind, string>>> = { witness: 'source', layer: 'hand', note: 'annotation' };

interface Placed {
  readonly symbol: DocumentSymbol & { children: DocumentSymbol[] };
  readonly start: number;
  readonly end: number;
}

const placed = (
  tree: FileTree,
  kind: SymbolKind,
  name: string,
  { start, end, headEnd = end }: { readonly start: number; readonly end: number; readonly headEnd?: number },
  detail?: string,
): Placed => ({
  symbol: {
    // An editor refuses a name without a sign in it.
    name: name.trim() === '' ? '?' : name,
    kind,
    range: rangeOfOffsets(tree, start, end),
    selectionRange: rangeOfOffsets(tree, start, headEnd),
    children: [],
    ...(detail === undefined ? {} : { detail }),
  },
  start,
  end,
});

/** The symbols of a file; each lies in the one around it. */
export function documentSymbols(project: Project): DocumentSymbol[] {
  const { tree } = project;
  const all = [
    ...stretchesOf(tree).map((one) =>
      one.kind === 'piece'
        ? placed(tree, SymbolKind.Module, one.name, one)
        : placed(tree, SymbolKind.Namespace, `page ${one.name}`, one),
    ),
    ...declared(project),
    ...systemsOf(project).flatMap(({ block, system, bars }) => [
      placed(
        tree,
        SymbolKind.Class,
        `system ${system.ordinal}`,
        { start: block.offset, end: textEnd(block), headEnd: block.offset + 'system'.length },
        inWords(bars),
      ),
      ...bars.map(({ number, start, end }) => placed(tree, SymbolKind.Event, `bar ${number}`, { start, end })),
    ]),
  ].sort((a, b) => a.start - b.start || b.end - a.end);
  return nested(all);
}

function inWords(bars: SystemBars['bars']): string | undefined {
  const [first] = bars;
  return first && barsFromTo(first.number, (bars.at(-1) ?? first).number);
}

function nested(all: readonly Placed[]): DocumentSymbol[] {
  const roots: DocumentSymbol[] = [];
  const around: Placed[] = [];
  for (const one of all) {
    while (around.length > 0 && (around.at(-1)?.end ?? 0) < one.end) around.pop();
    (around.at(-1)?.symbol.children ?? roots).push(one.symbol);
    around.push(one);
  }
  return roots;
}

const isShown = ({ given, kind }: NameAt): boolean =>
  given && (kind === 'section' || kinds[kind as GivenKind] !== undefined);

const kindOf = ({ kind }: NameAt): SymbolKind => kinds[kind as GivenKind] ?? SymbolKind.Key;

const wordOf = ({ kind }: NameAt): string => words[kind as GivenKind] ?? kind;

const declared = (project: Project): Placed[] =>
  namesIn(project)
    .filter(isShown)
    .map((one) =>
      one.kind === 'section'
        ? placed(project.tree, SymbolKind.Key, `section ${one.name}`, one)
        : placed(project.tree, kindOf(one), one.name, one, wordOf(one)),
    );

interface SystemBars {
  readonly block: Block;
  readonly system: ScoreSystem;
  /** As the first lane has them. */
  readonly bars: readonly { readonly number: string; readonly start: number; readonly end: number }[];
}

function systemsOf({ analysis, tree }: Project): SystemBars[] {
  const pieces = analysis.score('written')?.pieces ?? [];
  return pieces.flatMap((piece) =>
    piece.systems.flatMap((system) => {
      const block = tree.blocks[system.block];
      const lane = block?.lanes.find((one) => one.tree.kind === 'lane');
      if (block === undefined) return [];
      const bars = (lane?.tree.segments ?? []).flatMap((segment, index) => {
        const number = piece.bars[system.firstBar + index]?.number;
        const first = segment.items[0] ?? segment;
        const inside = { pos: first.pos, len: segment.pos + segment.len - first.pos };
        return lane === undefined || number === undefined ? [] : [{ number, ...stretchIn(block, lane, inside) }];
      });
      return [{ block, system, bars }];
    }),
  );
}

/**
 * What files declare whose names hold what was typed, letters in their order.
 * @param projects open files, which go before what they were when they were saved
 * @param others files that are not open
 */
export function workspaceSymbols(
  projects: readonly Project[],
  others: readonly NamedTree[],
  typed: string,
): WorkspaceSymbol[] {
  const wanted = typed.toLowerCase();
  const fits = (name: string): boolean => {
    let at = 0;
    for (const sign of name.toLowerCase()) if (sign === wanted[at]) at++;
    return at >= wanted.length;
  };
  const all = [...projects.flatMap((project): NamedTree[] => [project, ...project.included]), ...others];
  return eachOnce(all).flatMap((named) =>
    namesIn(named)
      .filter((one) => isShown(one) && fits(one.name))
      .map((one) => ({
        name: one.name,
        kind: kindOf(one),
        containerName: wordOf(one),
        location: { uri: named.file, range: rangeOfOffsets(named.tree, one.start, one.end) },
      })),
  );
}

/** Each file once: what stands beside it to be compared, under another scheme and with a query, is the same score. */
function eachOnce(files: readonly NamedTree[]): NamedTree[] {
  const found = new Map<string, NamedTree>();
  for (const one of files) {
    const path = one.file.replace(/^[a-z][\w+.-]*:(?:\/\/)?/i, '').replace(/\?.*$/, '');
    const known = found.get(path);
    if (known === undefined || (known.file.includes('?') && !one.file.includes('?'))) found.set(path, one);
  }
  return [...found.values()];
}
