/** The generated TextMate grammar: fresh, in agreement with the lexer, and quick on any line. */
import { readFileSync } from 'node:fs';
import { type TokenType, tokenMatcher } from 'chevrotain';
import { beforeAll, describe, expect, it } from 'vitest';
import type { IGrammar } from 'vscode-textmate';
import { textMateGrammar } from '../../grammar/generate/textmate';
import {
  Bar,
  Beam,
  Gap,
  Lost,
  lexerOf,
  MarkToken,
  Note,
  OptionsClose,
  OptionsOpen,
  Quoted,
  Repeat,
  Rest,
  Round,
  SpanOpen,
  Value,
} from '../../grammar/lanes/tokens';
import { parseFile } from '../../grammar/parse';
import { numbersOf } from '../helpers/chance';
import { sampleNames, sampleText } from '../helpers/samples';
import { coloured, endsItself, grammarPath, loadGrammar, timeToColour } from '../helpers/textmate';

let grammar: IGrammar;
beforeAll(async () => {
  grammar = await loadGrammar();
});

/** What is coloured in a line, as `text scope`. */
const colours = (line: string): string[] => coloured(grammar, line).map(({ text, scope }) => `${text} ${scope}`.trim());

describe('the TextMate grammar', () => {
  it('is as the vocabulary is now (else: npm run generate)', () => {
    expect(readFileSync(grammarPath, 'utf8')).toBe(textMateGrammar());
  });

  it('tells the voice, its values, notes and signs apart', () => {
    expect(colours("  dessus | 4. b4'zz 8 c5= r |||")).toEqual([
      'dessus entity.name.tag.voice',
      '| keyword.operator.barline',
      '4. constant.numeric.value',
      'b4 variable.other.note',
      "'zz entity.name.function.mark",
      '8 constant.numeric.value',
      'c5= variable.other.note',
      'r constant.language.rest',
      '||| keyword.operator.barline',
    ]);
  });

  it('knows a witness lane, options, spans and a change of clef', () => {
    expect(colours('  dessus L | <v3*n7 K,M: 4 c5 ; L: omit> {3in2 8 c5} (now C3) *n7')).toEqual([
      'dessus entity.name.tag.voice',
      'L entity.name.type.witness',
      '| keyword.operator.barline',
      '< keyword.control.options',
      'v3 variable.other.place',
      '* keyword.operator.annotation',
      'n7 constant.other.note',
      'K,M: entity.name.type.label',
      '4 constant.numeric.value',
      'c5 variable.other.note',
      '; keyword.control.options',
      'L: entity.name.type.label',
      'omit constant.language.rest',
      '> keyword.control.options',
      '{3in2 storage.type.span',
      '8 constant.numeric.value',
      'c5 variable.other.note',
      '} storage.type.span',
      '( punctuation.definition.change',
      'now keyword.other.change',
      'C3 constant.other.clef',
      ') punctuation.definition.change',
      '* keyword.operator.annotation',
      'n7 constant.other.note',
    ]);
  });

  it('knows statements, their clauses, and a clause on a line of its own', () => {
    expect(colours('system upper C1 key bb meter cut-C = 2/2  // as drawn')).toEqual([
      'system keyword.control.statement',
      'upper variable.other',
      'C1 constant.other.clef',
      'key storage.modifier.clause',
      'bb variable.other',
      'meter storage.modifier.clause',
      'cut-C constant.other.meter',
      '= keyword.operator',
      '2/2 constant.numeric',
      '// as drawn comment.line.double-slash',
    ]);
    expect(colours('  practice overdot double in A')).toEqual([
      'practice storage.modifier.clause',
      'overdot constant.language',
      'double constant.language',
      'in storage.modifier.clause',
      'A variable.other',
    ]);
  });

  it('reads syllables and figures as words, whatever notes they look like', () => {
    expect(colours('    text | a- men |')).toEqual([
      'text keyword.other.lane',
      '| keyword.operator.barline',
      'a- string.unquoted',
      'men string.unquoted',
      '| keyword.operator.barline',
    ]);
  });

  it('takes letters run together for no notes', () => {
    expect(colours('dessus | face')).toEqual(['dessus entity.name.tag.voice', '| keyword.operator.barline', 'face']);
  });

  it('colours every token of the samples as the lexer reads it', () => {
    const pieces = sampleNames.flatMap((name) => lanePieces(sampleText(name)));
    expect(pieces.length).toBeGreaterThan(100);
    expect(pieces.flatMap(differences)).toEqual([]);
  });

  it('ends with the line, whatever is left open in it', () => {
    const open = [
      'title "no end',
      '  dessus | {3in2 8 c5 <K: 4 d',
      '  dessus | c5 (now',
      '  dessus | "words',
      'reading x (up',
    ];
    const lines = [...open, ...sampleNames.flatMap((name) => sampleText(name).split('\n'))];
    expect(lines.filter((line) => !endsItself(grammar, line))).toEqual([]);
  });
});

// ─── against the lexer ───────────────────────────────────────────────────────────────────────────────────────────

/** What a token of the lexer is coloured as. */
const expected: readonly (readonly [TokenType, string])[] = [
  [Bar, 'keyword.operator.barline'],
  [Beam, 'keyword.operator.beam'],
  [Gap, 'constant.language.rest'],
  [Lost, 'constant.language.rest'],
  [MarkToken, 'entity.name.function.mark'],
  [Note, 'variable.other.note'],
  [OptionsClose, 'keyword.control.options'],
  [OptionsOpen, 'keyword.control.options'],
  [Quoted, 'string.quoted.double'],
  [Repeat, 'keyword.operator.tie'],
  [Rest, 'constant.language.rest'],
  [Round, 'punctuation.definition.change'],
  [SpanOpen, 'storage.type.span'],
  [Value, 'constant.numeric.value'],
];

interface LanePiece {
  readonly line: string;
  /** Where the lane's own text begins in the line. */
  readonly from: number;
}

/** The lines of a file's lanes; figures and syllables have a lexer of their own. */
function lanePieces(text: string): LanePiece[] {
  const lines = text.split('\n');
  return parseFile(text).blocks.flatMap((block) =>
    block.lanes
      .filter(({ tree }) => tree.kind === 'lane')
      .flatMap((lane) =>
        lane.starts.map((start, i) => {
          const at = block.offset + start;
          return {
            line: lines[block.line + (lane.lines[i] ?? 0)] ?? '',
            from: at - (text.lastIndexOf('\n', at - 1) + 1),
          };
        }),
      ),
  );
}

function differences({ line, from }: LanePiece): string[] {
  const seen = new Map(coloured(grammar, line).map((token) => [token.start, token.scope]));
  return lexerOf('lane')
    .tokenize(line.slice(from))
    .tokens.flatMap((token) => {
      const scope = expected.find(([type]) => tokenMatcher(token, type))?.[1];
      const has = seen.get(from + token.startOffset) ?? '';
      return scope === undefined || has === scope ? [] : [`${token.image} in ${line.trim()}: ${has}, not ${scope}`];
    });
}

// ─── how long it takes ───────────────────────────────────────────────────────────────────────────────────────────

const MUSIC = '4. b4\'zz 8 c5= <K: 2 c5 ; L: 4 c5 b4> {3in2 8 d\'pince:french e f} (now C3) *"note" ';
/** Beyond this length an editor colours no line. */
const LONGEST = 20_000;
/** Milliseconds: far more than is needed, far less than a matcher takes that goes astray. */
const PATIENCE = 1500;

const lineOf = (begin: string, piece: string): string => begin + piece.repeat(Math.ceil(LONGEST / piece.length));

describe('the time to colour a line of 20,000 characters', () => {
  const pieces = [
    MUSIC,
    "'",
    '"',
    '(',
    '<',
    '{',
    ':',
    ';',
    '|',
    ' ',
    'a',
    'a,',
    'K,',
    'b',
    '-',
    '4',
    '4x',
    '*"',
    "'zz(",
    "c5'",
    '<K:',
    '/',
    '((',
    '[#]',
  ];
  for (const piece of pieces) {
    it(`is short for a lane of ${JSON.stringify(piece)}`, () => {
      expect(timeToColour(grammar, lineOf('  dessus | ', piece))).toBeLessThan(PATIENCE);
    });
    it(`is short for a statement of ${JSON.stringify(piece)}`, () => {
      expect(timeToColour(grammar, lineOf('reading x ', piece))).toBeLessThan(PATIENCE);
      expect(timeToColour(grammar, lineOf('', piece))).toBeLessThan(PATIENCE);
    });
  }

  it('is short for random text', () => {
    const letters = [...'abcgKL\'"|:;<>{}()[]=*&,.-#_ 0123456789/+!?~\té😀'];
    for (let seed = 1; seed <= 5; seed++) {
      const text = numbersOf(seed, LONGEST).map((number) => letters[number % letters.length]);
      expect(timeToColour(grammar, `  dessus | ${text.join('')}`)).toBeLessThan(PATIENCE);
      expect(timeToColour(grammar, text.join(''))).toBeLessThan(PATIENCE);
    }
  });
});
