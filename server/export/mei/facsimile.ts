/** The pictures of the pages, and where each system lies on them. */
import { clauseOf, firstOf } from '../../../grammar/statements/read';
import type { FileTree } from '../../../grammar/tree';
import type { ScoreSystem } from '../../score/score';
import type { Measure } from '../measures';
import { type XmlElement, xml } from '../xml';
import { pageId, wordOf, zoneId } from './ids';

/** What of the source can be pointed at. */
export interface Pictures {
  /** Undefined where no page has a picture nor a system a place on it. */
  readonly element: XmlElement | undefined;
  readonly ofPage: (page: string) => string | undefined;
  readonly ofSystem: (system: ScoreSystem) => string | undefined;
}

interface Surface {
  image: string | undefined;
  readonly zones: XmlElement[];
}

export function picturesOf(tree: FileTree, measures: readonly Measure[]): Pictures {
  const surfaces = new Map<string, Surface>();
  const surface = (page: string): Surface => {
    const known = surfaces.get(page) ?? { image: undefined, zones: [] };
    surfaces.set(page, known);
    return known;
  };
  const systems = [...new Set(measures.map(({ piece }) => piece))].flatMap((piece) => piece.systems);
  const zoned = new Set<ScoreSystem>();
  for (const system of systems) {
    const zone = zoneOf(tree, system);
    if (zone === undefined) continue;
    surface(system.page).zones.push(zone);
    zoned.add(system);
  }
  const pages = new Set(systems.map(({ page }) => page));
  for (const [page, image] of imagesIn(tree)) if (pages.has(page)) surface(page).image = image;
  return {
    element: surfaces.size === 0 ? undefined : xml('facsimile', {}, [...surfaces].map(surfaceElement)),
    ofPage: (page) => (surfaces.has(page) ? `#${pageId(page)}` : undefined),
    ofSystem: (system) => (zoned.has(system) ? `#${zoneId(system)}` : undefined),
  };
}

const surfaceElement = ([page, { image, zones }]: readonly [string, Surface]): XmlElement =>
  xml('surface', { 'xml:id': pageId(page), ...wordOf(page) }, [
    image === undefined ? undefined : xml('graphic', { target: image }),
    ...zones,
  ]);

/** `at 120,340,1800,410` in the head of a system: left, top, width and height. */
export function regionOf(tree: FileTree, system: Pick<ScoreSystem, 'block'>): readonly number[] | undefined {
  const head = tree.blocks[system.block]?.statements[0]?.tree.statement;
  const at = head && clauseOf(head, 'at');
  return at && firstOf(at.args, 'region')?.numbers;
}

function zoneOf(tree: FileTree, system: ScoreSystem): XmlElement | undefined {
  const [left, top, width, height] = regionOf(tree, system) ?? [];
  if (left === undefined || top === undefined || width === undefined || height === undefined) return undefined;
  const corners = { ulx: left, uly: top, lrx: left + width, lry: top + height };
  return xml('zone', { 'xml:id': zoneId(system), ...corners });
}

/** The pictures that `page` statements name. */
export function imagesIn(tree: FileTree): ReadonlyMap<string, string> {
  const images = new Map<string, string>();
  for (const { statements } of tree.blocks) {
    for (const { statement } of statements.map((placed) => placed.tree)) {
      const page = firstOf(statement.args, 'string')?.text;
      const image = firstOf(clauseOf(statement, 'image')?.args ?? [], 'string')?.text;
      if (statement.keyword === 'page' && page !== undefined && image !== undefined && !images.has(page))
        images.set(page, image);
    }
  }
  return images;
}
