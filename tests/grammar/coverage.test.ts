/**
 * Every item of the grammar and all that is glued to one and every word of the vocabulary is taken somewhere in the samples, which are
 * music, and somewhere in the examples of the reference, so that no construct stands there unexplained or untried. The
 * samples have every form besides.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { LaneParser } from '../../grammar/lanes/parser';
import * as tokens from '../../grammar/lanes/tokens';
import { parseFile } from '../../grammar/parse';
import { parseChange, parseStatement } from '../../grammar/statements/parser';
import type { Barline, FileTree, Item, Suffix } from '../../grammar/tree';
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

/** The tokens that begin an item in these texts, by name. */
function itemsBegunIn(texts: readonly string[]): Set<string> {
  const begun = new Set<string>();
  const rules = [...LaneParser.items];
  try {
    for (const [type, rule] of rules) {
      LaneParser.items.set(type, (parser) => {
        begun.add(type.name);
        return rule(parser);
      });
    }
    for (const text of texts) parseFile(text);
  } finally {
    for (const [type, rule] of rules) LaneParser.items.set(type, rule);
  }
  return begun;
}

const GLUED = [
  ...['note', 'rest', 'barline'].flatMap((what) => [`mark to a ${what}`, `annotation to a ${what}`]),
  'annotation to a bracket',
  'member to a note',
  'barline to a barline',
  'barline to the opening barline',
];

/** What is glued to what in these files, as {@link GLUED} has it. */
function gluedIn(trees: readonly FileTree[]): Set<string> {
  const seen = new Set<string>();
  const suffixes = (found: readonly Suffix[], what: string): void => {
    for (const { kind } of found) seen.add(`${kind} to a ${what}`);
  };
  const barline = (bar: Barline): void => {
    suffixes(bar.suffixes, 'barline');
    if (bar.again !== undefined) seen.add('barline to a barline');
  };
  const look = (item: Item): void => {
    if (item.kind === 'barline') barline(item);
    if (item.kind === 'event') {
      suffixes(item.suffixes, 'rest');
      for (const member of item.members) suffixes(member.suffixes, 'note');
      if (item.members.length > 1) seen.add('member to a note');
    }
    if (item.kind !== 'span' && item.kind !== 'options') return;
    suffixes(item.suffixes, 'bracket');
    const inside = item.kind === 'span' ? item.items : item.options.flatMap(({ items }) => items);
    inside.forEach(look);
  };
  for (const { tree } of trees.flatMap(({ blocks }) => blocks.flatMap(({ lanes }) => lanes))) {
    suffixes(tree.opening.suffixes, 'barline');
    if (tree.opening.again !== undefined) seen.add('barline to the opening barline');
    for (const { items, bar } of tree.segments) {
      items.forEach(look);
      if (bar !== undefined) barline(bar);
    }
  }
  return seen;
}

// ─── tokens and vocabulary ───────────────────────────────────────────────────────────────────────────────────────

function tokensIn(trees: readonly FileTree[]): Set<string> {
  const seen = new Set<string>();
  for (const { tree } of trees.flatMap(({ blocks }) => blocks.flatMap(({ lanes }) => lanes))) {
    const lexer = tree.kind === 'lane' ? tokens.laneLexer : tokens.subLaneLexer;
    for (const token of lexer.tokenize(tree.text)) seen.add(token.tokenType.name);
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
    wrongItems: new Set([...WRONG.tokens, ...WRONG.asItems, WRONG.junk].map(({ name }) => name)),
    wrongTokens: new Set([...WRONG.tokens, WRONG.junk].map(({ name }) => name)),
  },
  {
    corpus: 'the examples of the reference take',
    texts: examples,
    wrongItems: new Set<string>(),
    wrongTokens: new Set<string>(),
  },
];

describe.each(corpora)('$corpus', ({ texts, wrongItems, wrongTokens }) => {
  const trees = texts.map((text) => parseFile(text));

  it('every item of the lane grammar, and all that is glued to one', () => {
    const items = [...LaneParser.items.keys()].map(({ name }) => name);
    expect(without(items, itemsBegunIn(texts), wrongItems)).toEqual([]);
    expect(without(GLUED, gluedIn(trees))).toEqual([]);
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
