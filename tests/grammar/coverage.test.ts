/**
 * Every rule and alternative of the grammar and every word of the vocabulary is taken somewhere in the samples, which are
 * music, and somewhere in the examples of the reference, so that no construct stands there unexplained or untried. The
 * samples have every form besides.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { TokenType } from 'chevrotain';
import { describe, expect, it } from 'vitest';
import { LaneParser } from '../../grammar/lanes/parser';
import * as tokens from '../../grammar/lanes/tokens';
import { parseFile } from '../../grammar/parse';
import { parseChange, parseStatement } from '../../grammar/statements/parser';
import type { FileTree, Item } from '../../grammar/tree';
import { vocabularyPaths } from '../../grammar/vocabulary/statements';
import { ALL_FORMS, formsIn } from '../helpers/forms';
import { examplesOf, referenceText } from '../helpers/reference';

const SAMPLES = join(import.meta.dirname, '../../samples');

const filesIn = (folder: string): string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.bent'))
    .map((name) => readFileSync(join(folder, name), 'utf8'));

const samples = [...filesIn(SAMPLES), ...filesIn(join(SAMPLES, 'shared'))];
const examples = examplesOf(referenceText()).map(({ file }) => file);

/** Only what is wrong takes these; the samples are sound. */
const WRONG = {
  tokens: [tokens.BadBar, tokens.BareOpen, tokens.BareOptions, tokens.BareNext, tokens.OpenQuote, tokens.CurlyQuoted],
  /** Tokens that are wrong where they stand without an event. */
  asItems: [tokens.MarkToken, tokens.Annotated, tokens.Member],
  junk: tokens.JunkToken,
};

// ─── the lane grammar ────────────────────────────────────────────────────────────────────────────────────────────

/** What chevrotain keeps behind its types: its choices, and the rule that is being read. */
interface Engine {
  getCurrRuleFullName(): string;
  orInternal(alternatives: unknown, occurrence: number): unknown;
  optionInternal(action: () => unknown, occurrence: number): unknown;
  manyInternal(occurrence: number, action: () => unknown): unknown;
}

interface Production {
  readonly idx?: number;
  readonly definition?: readonly Production[];
  readonly terminalType?: TokenType;
  readonly nonTerminalName?: string;
  readonly constructor: { readonly name: string };
}

/** All choices below a production by what the engine calls them, `rule OR1.3`, `rule MANY1`, with what begins them. */
function choicesBelow(rule: string, production: Production): [string, string][] {
  // A rule that is called has choices of its own.
  if (production.constructor.name === 'NonTerminal') return [];
  const definition = production.definition ?? [];
  const below = definition.flatMap((part) => choicesBelow(rule, part));
  const begins = ({ definition: [first] = [] }: Production): string =>
    `${rule}: ${first?.terminalType?.name ?? first?.nonTerminalName}`;
  const kind = production.constructor.name;
  if (kind === 'Alternation') {
    const own = definition.map((one, index): [string, string] => [`${rule} OR${production.idx}.${index}`, begins(one)]);
    return [...own, ...below];
  }
  const words = new Map([
    ['Repetition', 'MANY'],
    ['Option', 'OPTION'],
  ]);
  const word = words.get(kind);
  return word === undefined ? below : [[`${rule} ${word}${production.idx}`, `${rule}: ${word}`], ...below];
}

const choices = new Map(
  Object.entries(new LaneParser().getGAstProductions()).flatMap(([name, rule]) =>
    choicesBelow(name, rule as unknown as Production),
  ),
);

/** What the engine calls the choices that it takes in these texts. */
function choicesTaken(texts: readonly string[]): Set<string> {
  const taken = new Set<string>();
  const engine = LaneParser.prototype as unknown as Engine;
  const { orInternal, optionInternal, manyInternal } = engine;
  const heard = (self: Engine, what: string): void => {
    taken.add(`${self.getCurrRuleFullName()} ${what}`);
  };
  engine.orInternal = function (this: Engine, alternatives, occurrence) {
    const told = (alternatives as { ALT: () => unknown }[]).map((one, index) => ({
      ...one,
      ALT: () => {
        heard(this, `OR${occurrence}.${index}`);
        return one.ALT.call(this);
      },
    }));
    return orInternal.call(this, told, occurrence);
  };
  engine.optionInternal = function (this: Engine, action, occurrence) {
    return optionInternal.call(
      this,
      () => {
        heard(this, `OPTION${occurrence}`);
        return action.call(this);
      },
      occurrence,
    );
  };
  engine.manyInternal = function (this: Engine, occurrence, action) {
    return manyInternal.call(this, occurrence, () => {
      heard(this, `MANY${occurrence}`);
      return action.call(this);
    });
  };
  try {
    for (const text of texts) parseFile(text);
  } finally {
    Object.assign(engine, { orInternal, optionInternal, manyInternal });
  }
  return taken;
}

// ─── tokens and vocabulary ───────────────────────────────────────────────────────────────────────────────────────

function tokensIn(trees: readonly FileTree[]): Set<string> {
  const seen = new Set<string>();
  for (const { tree } of trees.flatMap(({ blocks }) => blocks.flatMap(({ lanes }) => lanes))) {
    for (const token of tokens.lexerOf(tree.kind).tokenize(tree.text).tokens) seen.add(token.tokenType.name);
  }
  return seen;
}

function pathsIn(trees: readonly FileTree[]): Set<string> {
  const taken = new Set<string>();
  const hear = (path: string): void => {
    taken.add(path);
  };
  const changes = (items: readonly Item[]): void => {
    for (const item of items) {
      if (item.kind === 'change') parseChange(item.change.text, hear);
      else if (item.kind === 'span') changes(item.items);
      else if (item.kind === 'options') for (const option of item.options) changes(option.items);
    }
  };
  for (const { statements, lanes } of trees.flatMap(({ blocks }) => blocks)) {
    for (const { tree } of statements) parseStatement(tree.text, tree.joints, hear);
    for (const { tree } of lanes) for (const segment of tree.segments) changes(segment.items);
  }
  return taken;
}

// ─── what is wanting ─────────────────────────────────────────────────────────────────────────────────────────────

const without = (all: Iterable<string>, ...taken: readonly { has(one: string): boolean }[]): string[] =>
  [...all].filter((one) => !taken.some((some) => some.has(one)));

const corpora = [
  {
    corpus: 'the samples take',
    texts: samples,
    wrongChoices: new Set([
      ...WRONG.tokens.flatMap(({ name }) => ['bar', 'group', 'options', 'items'].map((rule) => `${rule}: ${name}`)),
      ...[...WRONG.asItems, WRONG.junk].map(({ name }) => `items: ${name}`),
    ]),
    wrongTokens: new Set([...WRONG.tokens, WRONG.junk].map(({ name }) => name)),
  },
  {
    corpus: 'the examples of the reference take',
    texts: examples,
    wrongChoices: new Set<string>(),
    wrongTokens: new Set<string>(),
  },
];

describe.each(corpora)('$corpus', ({ texts, wrongChoices, wrongTokens }) => {
  const trees = texts.map((text) => parseFile(text));

  it('every choice of the lane grammar', () => {
    const wanting = without(choices.keys(), choicesTaken(texts)).map((one) => choices.get(one) ?? one);
    expect(choices.size).toBeGreaterThan(30);
    expect(without(wanting, wrongChoices)).toEqual([]);
  });

  it('every token of lanes and sub-lanes', () => {
    const all = [...tokens.laneTokens, tokens.SubItem].map((type) => type.name);
    const skipped = new Set(['Space', 'Comment']);
    expect(without(all, tokensIn(trees), wrongTokens, skipped)).toEqual([]);
  });

  it('every statement, clause, row, word and change of the vocabulary', () => {
    expect(without(vocabularyPaths(), pathsIn(trees))).toEqual([]);
  });
});

describe('the samples show', () => {
  const seen = new Set(samples.flatMap((text) => [...formsIn(parseFile(text))]));

  it.each(ALL_FORMS)('%s', (form) => {
    expect(seen.has(form)).toBe(true);
  });
});
