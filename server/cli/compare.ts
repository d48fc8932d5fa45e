/** `bentside compare`: sources and readings of one score, bar by bar. */
import { type Chosen, type Comparison, compareScores } from '../readings/compare';
import { type Agreement, kindInWords, nameOn } from '../readings/compare/differences';
import { howMany } from '../score/amounts';
import { projectOf, unreadIn } from '../workspace/project';
import { type CliHost, COULD_NOT, type Command, FAULTY, SOUND } from './command';
import { isFaulty } from './faulty';
import { inputOptions, inputsOf, isUnread } from './inputs';
import { didYouMean, type Given } from './options';
import { findingLine, shown } from './print';

export const compare: Command = {
  options: {
    json: { says: 'JSON instead of text' },
    ...inputOptions,
  },
  async run(host, given) {
    const compared = await comparisonOf(host, given);
    if (typeof compared === 'string') {
      host.say(`${compared}\n`);
      return COULD_NOT;
    }
    const { comparison, isSound } = compared;
    host.out(given.flags.has('json') ? `${JSON.stringify(comparison, undefined, 2)}\n` : comparisonText(comparison));
    return isSound ? SOUND : FAULTY;
  },
};

interface Compared {
  readonly comparison: Comparison;
  /** The score has no errors. */
  readonly isSound: boolean;
}

/** The comparison, or a sentence that says why there is none. */
async function comparisonOf(host: CliHost, given: Given): Promise<Compared | string> {
  const [file = '', ...names] = given.operands;
  const [input] = await inputsOf(host, { ...given, operands: [file] });
  if (input === undefined) return `There is no ${shown(file)}.`;
  if (isUnread(input)) return `${shown(input.file)}: ${input.failure}`;
  const project = projectOf(host.includes(input.file), input.file, input.text, { counsel: false });
  const { analysis } = project;
  const wanted = names.length > 0 ? [...new Set(names)] : analysis.environment.sources.map(({ name }) => name);
  const unknown = wanted.find((name) => !analysis.choices.includes(name));
  const isRefused = unknown !== undefined || wanted.length < 2;
  const unread = isRefused ? unreadIn(project) : undefined;
  if (unread !== undefined) return findingLine(unread).trimEnd();
  if (unknown !== undefined) {
    const { choices } = analysis;
    return `${shown(file)} has no reading or source “${shown(unknown)}”, but ${choices.join(', ')}.${didYouMean(unknown, choices)}`;
  }
  if (wanted.length < 2) {
    const why = names.length > 0 ? '' : `${shown(file)} has fewer than two sources. `;
    return `${why}Name two or more of what it can be read as (${analysis.choices.join(', ')}): bentside compare FILE K L`;
  }
  const comparison = compareScores(wanted.flatMap((name) => analysis.score(name) ?? []));
  return { comparison, isSound: !isFaulty(host, project) };
}

function comparisonText({ file, texts, differences, agreements }: Comparison): string {
  const places = differences.map(({ piece, bar, voice, symbol, kind, sides }) => {
    const where = [piece && `“${piece}”`, `bar ${bar}`, voice, symbol > 0 && `symbol ${symbol}`]
      .filter(Boolean)
      .join(', ');
    const lines = sides.map((side) => {
      const { names, inWords, place } = side;
      const at = place === undefined ? '' : `  [${place.address}, ${place.line}:${place.column}]`;
      return `    ${names.map((name) => nameOn(side, name)).join(', ')}: ${inWords}${at}\n`;
    });
    return `${where} (${kindInWords[kind]})\n${lines.join('')}`;
  });
  const count = howMany(differences.length, 'difference', 'differences');
  return shownLines([
    `${file}: ${texts.map(({ name }) => name).join(', ')}\n\n`,
    ...texts.map(chosenText),
    '\n',
    ...places,
    `${differences.length > 0 ? '\n' : ''}${count}\n`,
    ...agreements.map(agreementText),
  ]);
}

const shownLines = (parts: readonly string[]): string => parts.join('').split('\n').map(shown).join('\n');

const chosenText = ({ name, description, inWords }: Chosen): string =>
  `${name}: ${[...(description === '' ? [] : [description]), ...inWords].join('; ')}\n`;

const agreementText = ({ groups, places }: Agreement): string =>
  `${groups.map((names) => names.join(', ')).join(' against ')}: ${places}\n`;
