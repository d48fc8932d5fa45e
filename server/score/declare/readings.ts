/** Sources with their layers, and readings. */
import { allOf, clauseOf, clausesOf, firstOf } from '../../../grammar/statements/read';
import type { Argument, Clause, NamePart } from '../../../grammar/tree';
import { MOST_CHOICES, type ReadingDeclaration, type SourceDeclaration } from '../environment';
import { type Declarations, type Found, type NameLike, nameIn, practiceIn, stringIn } from './declarations';
import { checkWays } from './from';

/** Words that a reading can take besides sources, layers and readings. */
const corrections = ['sic', 'corr'];

export function sourcesOf(declarations: Declarations): SourceDeclaration[] {
  const sources = new Map<string, SourceDeclaration & { hands: { layer: number; description: string }[] }>();
  for (const found of declarations.of('source')) {
    const name = nameIn(found.statement.args);
    if (name === undefined || !declarations.give('label', found, name)) continue;
    const description = stringIn(found.statement.args) ?? '';
    sources.set(name.text, { ...found.declared, name: name.text, description, hands: [] });
  }
  for (const found of declarations.of('hand')) {
    const name = nameIn(found.statement.args);
    const [letter, layer] = name?.text.split('.') ?? [];
    if (name === undefined || letter === undefined || layer === undefined) continue;
    const source = sources.get(letter);
    if (source === undefined) {
      const at = { text: letter, pos: name.pos, len: letter.length };
      declarations.unknown(found, at, 'unknown-source', [...sources.keys()]);
    } else if (declarations.give('label', found, name)) {
      source.hands.push({ layer: Number(layer), description: stringIn(found.statement.args) ?? '' });
    }
  }
  return [...sources.values()];
}

function readingOf(found: Found, name: NameLike): ReadingDeclaration {
  const { statement, declared } = found;
  const first = (clause: string): readonly Argument[] => clauseOf(statement, clause)?.args ?? [];
  const order = allOf(first('order'), 'name').map((section) => section.text);
  const places = clausesOf(statement, 'at').flatMap(({ args }): [string, string][] => {
    const [place, label] = allOf(args, 'name');
    return place === undefined || label === undefined ? [] : [[place.text, label.text]];
  });
  return {
    ...declared,
    name: name.text,
    description: stringIn(statement.args) ?? '',
    from: nameIn(first('from'))?.text,
    takes: firstOf(first('takes'), 'names')?.names.map((label) => label.text) ?? [],
    // Of two words about one place the first counts.
    at: new Map(places.reverse()),
    accidentals: practiceIn(first('accidentals')),
    signs: nameIn(first('signs'))?.text,
    order: order.length === 0 ? undefined : order,
    clauses: statement.clauses,
  };
}

/** The labels that a reading cites, with their places. */
const labelsIn = ({ clauses }: { readonly clauses: readonly Clause[] }): NamePart[] => [
  ...clauses
    .filter((clause) => clause.name === 'takes')
    .flatMap((clause) => allOf(clause.args, 'names').flatMap((list) => list.names)),
  ...clauses.filter((clause) => clause.name === 'at').flatMap((clause) => allOf(clause.args, 'name').slice(1)),
];

/** A reading says of each place once what it takes there. */
function checkPlaces(declarations: Declarations, found: Found): void {
  const said = new Set<string>();
  for (const clause of clausesOf(found.statement, 'at')) {
    const place = nameIn(clause.args)?.text;
    if (place === undefined) continue;
    if (said.has(place))
      declarations.report(found, clause, 'repeated-clause', { word: `at ${place}`, where: 'reading' });
    said.add(place);
  }
}

export function readingsOf(declarations: Declarations, sources: readonly SourceDeclaration[]): ReadingDeclaration[] {
  const founds: { found: Found; reading: ReadingDeclaration }[] = [];
  for (const found of declarations.of('reading')) {
    const name = nameIn(found.statement.args);
    if (name === undefined || !declarations.give('label', found, name)) continue;
    founds.push({ found, reading: readingOf(found, name) });
  }
  for (const { found } of founds) checkPlaces(declarations, found);
  const readings = founds.map(({ reading }) => reading);
  const names = readings.map((reading) => reading.name);
  const layers = sources.flatMap(({ name, hands }) => hands.map(({ layer }) => `${name}.${layer}`));
  const labels = new Set([...sources.map((source) => source.name), ...layers, ...names, ...corrections]);
  for (const { found } of founds) {
    for (const label of labelsIn(found.statement)) {
      if (!labels.has(label.text)) declarations.unknown(found, label, 'unknown-label', labels);
    }
  }
  checkWays(
    declarations,
    founds.map(({ found, reading }) => ({ found, name: reading.name })),
    { known: names, unknown: 'unknown-reading', circle: 'reading-circle' },
  );
  return readings;
}

/** Too many to be chosen: told where the first stands that cannot be. */
export function checkChoices(declarations: Declarations, choices: readonly string[]): void {
  const name = choices[MOST_CHOICES];
  if (name === undefined) return;
  const isIt = ({ statement }: Found): boolean => nameIn(statement.args)?.text === name;
  const found = ['reading', 'source', 'hand'].flatMap((keyword) => declarations.of(keyword)).find(isIt);
  if (found === undefined) return;
  const { file } = found.declared;
  const at = file === undefined ? found : declarations.includeOf(file);
  if (at !== undefined) declarations.report(at, at.statement, 'too-many-choices', { name, most: MOST_CHOICES });
}
