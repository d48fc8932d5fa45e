/**
 * The TextMate grammar that colours a file before the server has read it, and where there is none.
 *
 * Shallow on purpose: it looks at one line at a time and knows no names, for the server's tokens come over it. No
 * rule goes on to the next line, so a slip never colours what is below it. Spellings of signs are those of the lexer.
 */
import { signTables } from '../../server/signs/tables';
import { source } from '../lanes/patterns';
import type { Clauses, Part } from '../vocabulary/parts';
import { changes, recipeForms, statements } from '../vocabulary/statements';
import { temperaments } from '../vocabulary/temperaments';

/** One rule, as editors read it. */
interface Rule {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly captures?: Captures;
  readonly beginCaptures?: Captures;
  readonly endCaptures?: Captures;
  readonly patterns?: readonly Rule[];
  readonly include?: string;
}

type Captures = Readonly<Record<string, { readonly name: string }>>;

const LANGUAGE = 'bentside';
const LINE_END = '(?=$)';

const scope = (name: string): string => `${name}.${LANGUAGE}`;
const matched = (name: string, match: string): Rule => ({ name: scope(name), match });
const captured = (...names: readonly string[]): Captures =>
  Object.fromEntries(names.map((name, index) => [String(index + 1), { name: scope(name) }]));
const ref = (name: string): Rule => ({ include: `#${name}` });

// ─── words of the vocabulary ─────────────────────────────────────────────────────────────────────────────────────

const wordsIn = (texts: Iterable<string>): string[] =>
  [...texts].flatMap((text) => text.match(/[A-Za-z][\w-]*/g) ?? []);

/** What is not a number or a sign; several words that stand together are one. */
const phrasesIn = (texts: readonly string[]): string[] => texts.filter((text) => /^[A-Za-z]/.test(text));

/** Any of the words, whole. */
function anyOf(texts: Iterable<string>): string {
  const longestFirst = [...new Set(texts)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  return `(?<![\\w-])(?:${longestFirst.join('|')})(?![\\w-])`;
}

/** Words with which something begins: clauses, rows, and what stands before a part (`at`, `by`, `wolf`). */
function* leadingWords(parts: readonly Part[]): Generator<string> {
  for (const part of parts) {
    if (part.after !== undefined) yield part.after;
    for (const inner of innerParts(part)) yield* leadingWords(inner);
  }
}

/** Words of closed lists. */
function* listedWords(parts: readonly Part[]): Generator<string> {
  for (const part of parts) {
    if (part.kind === 'words') yield* Object.keys(part.words);
    for (const inner of innerParts(part)) yield* listedWords(inner);
  }
}

function innerParts(part: Part): readonly (readonly Part[])[] {
  if (part.kind === 'either') return part.forms;
  if (part.kind === 'words') return Object.values(part.words).map(({ follow }) => follow ?? []);
  return [];
}

const clauseNames = (clauses: Clauses): string[] =>
  Object.entries(clauses).flatMap(([name, { opens }]) => (opens === undefined ? [name] : []));

const entries = [
  ...Object.values(statements).flatMap((entry) => [entry, ...(entry.rows === undefined ? [] : [entry.rows])]),
  ...Object.values(changes),
];
const allParts = entries.flatMap(({ parts, clauses }) => [parts, ...Object.values(clauses).map((each) => each.parts)]);
const rowWords = Object.values(statements).flatMap(({ rows }) => rows?.word ?? []);

const clauseWords = anyOf([
  ...entries.flatMap(({ clauses }) => clauseNames(clauses)),
  ...rowWords,
  ...wordsIn(allParts.flatMap((parts) => [...leadingWords(parts)])),
]);
const valueWords = anyOf(phrasesIn(allParts.flatMap((parts) => [...listedWords(parts)])));
const recipeWords = anyOf(phrasesIn(Object.keys(recipeForms)));
const keywords = Object.keys(statements).join('|');
const builtIn = anyOf([...signTables.map(({ table }) => table), ...temperaments.map(({ name }) => name)]);
const changeWords = [...Object.keys(changes), 'above', 'below'].join('|');

// ─── rules ───────────────────────────────────────────────────────────────────────────────────────────────────────

const escapedQuote = matched('constant.character.escape', '""');

const repository: Readonly<Record<string, Rule>> = {
  comment: matched('comment.line.double-slash', '//.*$'),
  string: { name: scope('string.quoted.double'), begin: '"', end: `"(?!")|${LINE_END}`, patterns: [escapedQuote] },
  barline: matched('keyword.operator.barline', source.barline),

  statement: {
    begin: `^(${keywords})(?![\\w-])`,
    end: '$',
    beginCaptures: captured('keyword.control.statement'),
    patterns: [ref('clauses')],
  },
  furtherClauses: { begin: '^[ \\t]+(?=\\S)', end: '$', patterns: [ref('clauses')] },
  recipe: {
    begin: ':(?=[ \\t])',
    end: '$',
    beginCaptures: { 0: { name: scope('keyword.operator') } },
    patterns: [matched('constant.language', recipeWords), ref('clauses')],
  },
  clauses: {
    patterns: [
      ref('comment'),
      ref('string'),
      ref('recipe'),
      {
        match: '(meter)[ \\t]+([^\\s=/]+(?:/\\d+)?)',
        captures: captured('storage.modifier.clause', 'constant.other.meter'),
      },
      matched('storage.modifier.clause', clauseWords),
      matched('constant.language', valueWords),
      matched('support.type', builtIn),
      matched('constant.other.clef', '(?<![\\w-])[GCF]\\d(?:\\+[GCF]\\d)*(?![\\w-])'),
      matched('constant.numeric', '(?<![\\w#])[+-]?\\d[\\d.,:/]*(?![\\w])'),
      matched('keyword.operator', '[=:]'),
      matched('variable.other', '[A-Za-z][\\w.#-]*'),
    ],
  },

  subLane: {
    begin: '^[ \\t]*(fig|text)[ \\t]*(?=:?\\|)',
    end: '$',
    beginCaptures: captured('keyword.other.lane'),
    patterns: [ref('comment'), ref('string'), ref('barline'), matched('string.unquoted', '(?:[^\\s|"/]|/(?!/))+')],
  },
  lane: {
    begin: `^[ \\t]*(?:(${source.name})(?:[ \\t]+(${source.name}))?[ \\t]*)?(?=:?\\|)`,
    end: '$',
    beginCaptures: captured('entity.name.tag.voice', 'entity.name.type.witness'),
    patterns: [ref('music')],
  },
  music: {
    patterns: [
      ref('comment'),
      ref('string'),
      ref('barline'),
      ref('change'),
      matched('entity.name.function.mark', source.mark),
      { match: `(\\*)(${source.name})?`, captures: captured('keyword.operator.annotation', 'constant.other.note') },
      matched('storage.type.span', source.spanHead),
      matched('storage.type.span', '[{}]'),
      {
        match: `(<)(?:(${source.name})(?=[*\\s]))?`,
        captures: captured('keyword.control.options', 'variable.other.place'),
      },
      matched('keyword.control.options', '[;>]'),
      matched('entity.name.type.label', `${source.labels}(?![|:])`),
      matched('constant.language.rest', `(?:lost|rbar|omit|r|__|_)${source.afterEvent}`),
      matched('constant.numeric.value', `${source.value}${source.afterWord}`),
      matched('variable.other.note', `${source.spelling}(?:${source.tie})?${source.afterEvent}`),
      matched('keyword.operator.tie', source.tie),
      matched('keyword.operator.beam', '[&,-]'),
      // What is none of these is passed over whole, so that no end of it passes for a note.
      { match: '[\\w.#?]+' },
    ],
  },
  change: {
    begin: `(\\()(${changeWords})?(?![\\w-])`,
    end: `\\)|${LINE_END}`,
    beginCaptures: captured('punctuation.definition.change', 'keyword.other.change'),
    endCaptures: { 0: { name: scope('punctuation.definition.change') } },
    patterns: [ref('clauses')],
  },
};

/** The whole file. */
export function textMateGrammar(): string {
  const grammar = {
    information_for_contributors: 'Generated by `npm run generate` from grammar/generate/textmate.ts.',
    name: 'Bentside',
    scopeName: `source.${LANGUAGE}`,
    patterns: ['comment', 'subLane', 'lane', 'statement', 'furtherClauses'].map(ref),
    repository,
  };
  return `${JSON.stringify(grammar, undefined, 2)}\n`;
}
