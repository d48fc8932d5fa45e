/** Staves and voices. */
import { allOf, clauseOf, firstOf } from '../../../grammar/statements/read';
import type { Statement } from '../../../grammar/tree';
import type { StaveDeclaration, VoiceDeclaration } from '../environment';
import { type Declarations, type Found, type NameLike, nameIn, wordIn } from './declarations';

const USUAL_LINES = 5;

const linesOf = (statement: Statement): number | undefined =>
  firstOf(clauseOf(statement, 'lines')?.args ?? [], 'number')?.value;

interface Layout {
  readonly staves: StaveDeclaration[];
  readonly voices: VoiceDeclaration[];
}

export function layoutOf(declarations: Declarations): Layout {
  const named = new Set(declarations.of('stave').map(({ statement }) => nameIn(statement.args)?.text));
  const staves: StaveDeclaration[] = [];
  const waiting: { found: Found; name: NameLike }[] = [];
  for (const found of declarations.all) {
    const { statement, declared } = found;
    const name = nameIn(statement.args);
    if (name === undefined) continue;
    if (statement.keyword === 'stave' && declarations.give('stave', found, name)) {
      staves.push({ ...declared, name: name.text, lines: linesOf(statement) ?? USUAL_LINES });
    }
    if (statement.keyword !== 'voice' || !declarations.give('voice', found, name)) continue;
    waiting.push({ found, name });
    const own = statement.args.length === 1 && !named.has(name.text);
    if (own) staves.push({ ...declared, name: name.text, lines: linesOf(statement) ?? USUAL_LINES });
  }
  const voices = waiting.map(({ found, name }): VoiceDeclaration => {
    const stems = wordIn(clauseOf(found.statement, 'stems')?.args ?? []);
    return {
      ...found.declared,
      name: name.text,
      stave: staveOf(declarations, found, name, staves),
      stems: stems === 'up' || stems === 'down' ? stems : undefined,
    };
  });
  return { staves, voices };
}

/** Index of the stave of a voice; where it names none that there is, the one that it nearly names, or one of its own. */
function staveOf(declarations: Declarations, found: Found, voice: NameLike, staves: StaveDeclaration[]): number {
  const [, named] = allOf(found.statement.args, 'name');
  const wanted = named ?? voice;
  const lines = clauseOf(found.statement, 'lines');
  const index = staves.findIndex((stave) => stave.name === wanted.text);
  if (index >= 0) {
    const stave = staves[index];
    const isOwn = stave?.block === found.declared.block && stave.statement === found.declared.statement;
    if (lines !== undefined && !isOwn) {
      declarations.report(found, lines, 'lines-of-another', { stave: wanted.text, voice: voice.text });
    }
    return index;
  }
  const known = staves.map((stave) => stave.name);
  const meant = declarations.unknown(found, wanted, 'unknown-stave', known);
  if (meant !== undefined) return known.indexOf(meant);
  return staves.push({ ...found.declared, name: wanted.text, lines: linesOf(found.statement) ?? USUAL_LINES }) - 1;
}
