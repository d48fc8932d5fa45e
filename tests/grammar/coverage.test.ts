/**
 * Every rule and alternative of the grammar is taken somewhere in the samples or the examples of the reference, so no
 * construct stands there unexplained and untried.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { spanWords } from '../../grammar/lanes/forms';
import { LaneParser } from '../../grammar/lanes/parser';
import * as tokens from '../../grammar/lanes/tokens';
import { parseFile } from '../../grammar/parse';
import { parseChange, parseStatement } from '../../grammar/statements/parser';
import type { Item, MarkForm, Suffix } from '../../grammar/tree';
import { vocabularyPaths } from '../../grammar/vocabulary/statements';
import { examplesOf, referenceText } from '../helpers/reference';

const SAMPLES = join(import.meta.dirname, '../../samples');

const texts = [
  ...readdirSync(SAMPLES)
    .filter((name) => name.endsWith('.bent'))
    .map((name) => readFileSync(join(SAMPLES, name), 'utf8')),
  ...examplesOf(referenceText()).map(({ file }) => file),
];

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
  readonly constructor: { readonly name: string };
}

/** Names of all choices below a production: `rule OR1.3`, `rule MANY1`, `rule OPTION1`. */
function choicesBelow(rule: string, production: Production): string[] {
  // A rule that is called has choices of its own.
  if (production.constructor.name === 'NonTerminal') return [];
  const below = (production.definition ?? []).flatMap((part) => choicesBelow(rule, part));
  const kind = production.constructor.name;
  if (kind === 'Alternation') {
    const own = (production.definition ?? []).map((_, index) => `${rule} OR${production.idx}.${index}`);
    return [...own, ...below];
  }
  if (kind === 'Repetition') return [`${rule} MANY${production.idx}`, ...below];
  return kind === 'Option' ? [`${rule} OPTION${production.idx}`, ...below] : below;
}

function choicesTaken(): { readonly all: Set<string>; readonly taken: Set<string> } {
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
  const rules = Object.entries(new LaneParser().getGAstProductions()) as unknown as [string, Production][];
  return { all: new Set(rules.flatMap(([name, rule]) => choicesBelow(name, rule))), taken };
}

const without = (all: Iterable<string>, taken: ReadonlySet<string>): string[] =>
  [...all].filter((one) => !taken.has(one));

describe('samples and reference together take', () => {
  it('every choice of the lane grammar', () => {
    const { all, taken } = choicesTaken();
    expect(all.size).toBeGreaterThan(30);
    expect(without(all, taken)).toEqual([]);
  });

  it('every token of lanes and sub-lanes', () => {
    const seen = new Set<string>();
    for (const text of texts) {
      for (const block of parseFile(text).blocks) {
        for (const { tree } of block.lanes) {
          const lexer = tree.kind === 'lane' ? tokens.laneLexer : tokens.subLaneLexer;
          for (const token of lexer.tokenize(tree.text).tokens) seen.add(token.tokenType.name);
        }
      }
    }
    const all = [...tokens.laneTokens, tokens.SubItem].map((type) => type.name);
    const skipped = new Set(['Space', 'Comment']);
    expect(without(all, seen).filter((name) => !skipped.has(name))).toEqual([]);
  });

  it('every statement, clause, row, word and change of the vocabulary', () => {
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
    for (const text of texts) {
      for (const block of parseFile(text).blocks) {
        for (const { tree } of block.statements) parseStatement(tree.text, tree.joints, hear);
        for (const { tree } of block.lanes) for (const segment of tree.segments) changes(segment.items);
      }
    }
    expect(without(vocabularyPaths(), taken)).toEqual([]);
  });
});

// ─── what the tree can say ───────────────────────────────────────────────────────────────────────────────────────

/** Every form that an item, a mark, a tie, a note or a barline can take, by a name of its own. */
function formsIn(items: readonly Item[], seen: Set<string>): void {
  const suffixes = (list: readonly Suffix[], on: string): void => {
    for (const suffix of list) {
      if (suffix.kind === 'annotation')
        seen.add(suffix.ref === undefined ? 'annotation in words' : 'annotation by name');
      else markForms(suffix.form, on, seen);
    }
  };
  for (const item of items) {
    switch (item.kind) {
      case 'event':
        seen.add(`event ${item.what}`);
        suffixes(item.suffixes, item.what);
        if (item.tie !== undefined) tieForms(item.tie, 'lone =', seen);
        if (item.members.length > 1) seen.add('chord');
        for (const member of item.members) {
          suffixes(member.suffixes, 'note');
          if (member.stave !== undefined) seen.add(`chord member moved ${member.stave}`);
          if (member.tie !== undefined) tieForms(member.tie, 'tie', seen);
          const { accidental, editors, cautionary, doubtful } = member.spelling;
          if (accidental !== undefined) seen.add(`accidental ${accidental}`);
          if (editors !== undefined) seen.add("editor's accidental");
          if (cautionary !== undefined) seen.add('cautionary accidental');
          if (doubtful) seen.add('doubtful note');
        }
        break;
      case 'value':
        if (item.form.dots > 0) seen.add(`${item.form.dots} dots`);
        if (item.form.proportion !== undefined) seen.add(item.form.text.includes('in') ? 'value x5in4' : 'value x');
        if (item.form.doubtful) seen.add('doubtful value');
        seen.add(`value ${item.form.text.replace(/^(Mx|L|B|\d+).*/, '$1')}`);
        break;
      case 'span':
        seen.add(`span ${item.head.word ?? 'tuplet'}`);
        if (item.head.readings !== undefined) seen.add('span with readings');
        if (item.head.ratio !== undefined) seen.add('span with ratio');
        if (item.head.word !== undefined && item.head.proportion !== undefined) seen.add('span with proportion');
        suffixes(item.suffixes, 'span');
        formsIn(item.items, seen);
        break;
      case 'options':
        seen.add('options');
        if (item.place !== undefined) seen.add('options with a place');
        if (item.reasons.length > 0) seen.add('options with a reason');
        suffixes(item.suffixes, 'options');
        for (const option of item.options) {
          if (option.omit) seen.add('omit');
          if (option.labels.length > 1) seen.add('option with several labels');
          for (const label of option.labels) {
            if (label.layer !== undefined) seen.add('label of a layer');
            if (label.doubtful) seen.add('doubtful label');
            if (label.name === 'sic' || label.name === 'corr') seen.add(`label ${label.name}`);
          }
          formsIn(option.items, seen);
        }
        break;
      case 'lost':
        seen.add(item.form === undefined ? 'lost ?' : 'lost with a value');
        break;
      case 'beam':
        seen.add(item.join ? 'beam joined' : 'beam parted');
        break;
      case 'words':
        seen.add(`words ${item.place ?? 'plain'}`);
        break;
      case 'barline':
        seen.add('barline in a bracket');
        break;
      case 'figures':
        seen.add(`figures ${item.what}`);
        for (const column of item.columns) {
          if (item.columns.length > 1) seen.add('figures one after another');
          if (column.length > 1) seen.add('figures stacked');
          for (const figure of column) {
            if (figure.stroked) seen.add('figure with a stroke');
            if (figure.editors) seen.add("editor's figure");
            if (figure.number === undefined) seen.add('figure: accidental alone');
          }
        }
        break;
      case 'syllable':
        seen.add(`syllable ${item.what}`);
        if (item.goesOn) seen.add('syllable goes on');
        break;
      case 'change':
        seen.add(`change ${item.change.word}`);
        break;
      default:
        break;
    }
  }
}

function markForms(form: MarkForm, on: string, seen: Set<string>): void {
  seen.add(`mark ${form.type}`);
  if (form.type === 'other') seen.add(`mark ${form.name}`);
  if (form.type === 'curveStart')
    seen.add(`curve ${form.name}${form.openEnded ? '~' : ''} on ${on === 'note' ? 'a note' : 'another event'}`);
  if (form.type === 'curveEnd')
    seen.add(`curve end${form.openEnded ? '~' : ''}${form.begunOn === undefined ? '' : ' by pitch'}`);
  if ((form.fingers?.length ?? 0) > 1) seen.add('substituted fingers');
  if (form.editors) seen.add("editor's mark");
  if (form.doubtful) seen.add('doubtful mark');
  if (form.linked) seen.add('mark across lanes');
  if (form.parameters.length > 0) seen.add('mark with parameters');
  if (form.readings !== undefined) seen.add(form.readings.not ? 'mark not in readings' : 'mark in readings');
}

function tieForms(
  tie: { editors: boolean; doubtful: boolean; readings?: { not: boolean } },
  what: string,
  seen: Set<string>,
): void {
  seen.add(what);
  if (tie.editors) seen.add("editor's tie");
  if (tie.doubtful) seen.add('doubtful tie');
  if (tie.readings !== undefined) seen.add(tie.readings.not ? 'tie not in readings' : 'tie in readings');
}

const bases = ['Mx', 'L', 'B', '1', '2', '4', '8', '16', '32', '64', '128'];

const ALL_FORMS = [
  ...['note', 'rest', 'barRest', 'gap', 'barGap', 'repeat'].map((what) => `event ${what}`),
  ...bases.map((base) => `value ${base}`),
  ...['1 dots', '2 dots', 'value x', 'value x5in4', 'doubtful value'],
  ...['#', '##', 'b', 'bb', 'n'].map((sign) => `accidental ${sign}`),
  ...["editor's accidental", 'cautionary accidental', 'doubtful note', 'chord'],
  ...['up', 'down', 'home'].map((way) => `chord member moved ${way}`),
  ...['tie', 'lone =', "editor's tie", 'doubtful tie', 'tie in readings', 'tie not in readings'],
  ...['sign', 'finger', 'accidental', 'curveStart', 'curveEnd', 'other', 'weight'].map((type) => `mark ${type}`),
  ...['through', 'fermata', 'dot', 'stroke', 'renvoi', 'fin'].map((name) => `mark ${name}`),
  ...['substituted fingers', "editor's mark", 'doubtful mark', 'mark across lanes', 'mark with parameters'],
  ...['mark in readings', 'mark not in readings'],
  ...['curve u on a note', 'curve u on another event', 'curve u~ on a note', 'curve line on a note'],
  ...['curve end', 'curve end~', 'curve end by pitch'],
  ...['tuplet', ...spanWords.keys()].map((word) => `span ${word}`),
  ...['span with readings', 'span with ratio', 'span with proportion'],
  ...['options', 'options with a place', 'options with a reason', 'option with several labels', 'omit'],
  ...['label of a layer', 'doubtful label', 'label sic', 'label corr', 'barline in a bracket'],
  ...['lost ?', 'lost with a value', 'beam joined', 'beam parted', 'words plain', 'words above', 'words below'],
  ...['annotation in words', 'annotation by name'],
  ...['figures', 'none', 'hold'].map((what) => `figures ${what}`),
  ...[
    'figures one after another',
    'figures stacked',
    'figure with a stroke',
    "editor's figure",
    'figure: accidental alone',
  ],
  ...['syllable', 'none', 'hold'].map((what) => `syllable ${what}`),
  'syllable goes on',
  ...['now', 'up', 'down', 'home', 'stems', 'manual', 'custos', 'ending', 'section', 'irregular'].map(
    (w) => `change ${w}`,
  ),
  ...['|', '||', '|||', ':||', '||:', ':||:'].map((shape) => `barline ${shape}`),
  ...["editor's barline", 'barline with a mark', 'barline with an annotation', 'barline over two lines'],
  ...['lane', 'fig', 'text', 'witness'].map((kind) => `lane ${kind}`),
];

describe('samples and reference show', () => {
  const seen = new Set<string>();
  for (const text of texts) {
    for (const block of parseFile(text).blocks) {
      for (const lane of block.lanes) {
        seen.add(`lane ${lane.witness === undefined ? lane.tree.kind : 'witness'}`);
        for (const { items, bar } of lane.tree.segments) {
          formsIn(items, seen);
          if (bar === undefined) continue;
          seen.add(`barline ${bar.shape}`);
          if (bar.editors) seen.add("editor's barline");
          if (bar.again !== undefined) seen.add('barline over two lines');
          for (const suffix of bar.suffixes)
            seen.add(`barline with a${suffix.kind === 'mark' ? ' mark' : 'n annotation'}`);
        }
      }
    }
  }
  it.each(ALL_FORMS)('%s', (form) => {
    expect(seen.has(form)).toBe(true);
  });
});
