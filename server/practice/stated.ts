/** Practices as the statements of a file say them. */
import { afterWord, firstOf } from '../../grammar/statements/read';
import type { Argument, Span } from '../../grammar/tree';
import type { Environment, ReadingDeclaration } from '../score/environment';
import { type How, type Practice, type PracticeWord, USUAL } from './practice';

type Args = readonly Argument[];

const says = (args: Args, word: string): boolean => args.some((arg) => arg.kind === 'word' && arg.text === word);

/** What each word says further. */
const further: { readonly [Word in PracticeWord]?: (args: Args) => How } = {
  overdot: (args) => ({
    word: 'overdot',
    amount: says(args, 'shortest') ? 'shortest' : 'double',
    dot: says(args, 'silent') ? 'silent' : 'held',
  }),
  inegal: (args) => {
    const ratio = firstOf(args, 'ratio');
    return {
      word: 'inegal',
      value: firstOf(args, 'value')?.form.duration,
      ratio: ratio === undefined ? USUAL.inegal.ratio : { long: ratio.n, short: ratio.d },
      stepwise: says(args, 'stepwise'),
      longFirst: !says(args, 'short-long'),
    };
  },
  assimilate: (args) => ({
    word: 'assimilate',
    to: says(args, 'duple') ? 'duple' : says(args, 'literal') ? 'literal' : 'triplet',
  }),
};

function howOf(args: Args): How | undefined {
  const word = firstOf(args, 'word')?.text ?? '';
  if (!Object.hasOwn(USUAL, word)) return undefined;
  return further[word as PracticeWord]?.(args) ?? USUAL[word as PracticeWord];
}

interface Place extends Span {
  readonly block: number;
  readonly statement: number;
}

function practiceOf(args: Args, text: string, distance: number, place: Place): Practice[] {
  const how = howOf(args);
  if (how === undefined) return [];
  const name = (word: string): string | undefined => {
    const arg = afterWord(args, word);
    return arg?.kind === 'name' ? arg.text : undefined;
  };
  const { pos, len, block, statement } = place;
  const source = { pos, len, block, statement, lane: -1 };
  return [{ how, text, section: name('in'), voice: name('voice'), distance, source }];
}

/** The practices in force for a reading: its own, then those of the readings on which it is built, then the file's. */
export function practicesOf(environment: Environment, line: readonly ReadingDeclaration[]): readonly Practice[] {
  const own = line.flatMap((reading, distance) =>
    reading.clauses
      .filter(({ name }) => name === 'practice')
      .flatMap(({ args, pos, len }) => {
        const { block, statement } = reading;
        return practiceOf(args, typed(args), distance, { pos, len, block, statement });
      }),
  );
  const ofFile = environment.statements.flatMap(({ statement: { keyword, args }, declared }) =>
    keyword === 'practice' && declared.file === undefined ? practiceOf(args, typed(args), line.length, declared) : [],
  );
  return [...own, ...ofFile];
}

/** As typed, one space between its words. */
const typed = (args: Args): string =>
  args
    .map((arg) => {
      switch (arg.kind) {
        case 'word':
        case 'name':
          return arg.text;
        case 'ratio':
          return `${arg.n}:${arg.d}`;
        case 'value':
          return arg.form.text;
        default:
          return '';
      }
    })
    .join(' ');
