/** `npm run bench`: times and memory of the core, each beside something measured in the same run. */
import { parseFile } from '../../grammar/parse';
import { buildScore } from '../../server/score/build';
import { written } from '../../server/score/choice';
import { buildEnvironment } from '../../server/score/environment';
import { noFiles } from '../../server/workspace/host';
import { projectOf } from '../../server/workspace/project';
import { generateScore } from './generateScore';
import { kept, medians, ms, print } from './measure';
import { generateStylesheet, openStylesheet, parseStylesheet, proofStylesheet } from './stylesheet';

const KB = 1000;
const ROUNDS = 30;
const FILE = 'measure.bent';

const proof = (text: string): unknown => projectOf(noFiles, FILE, text).analysis.findings();

/** Tree and score of a megabyte; before all else, when nothing is kept yet. */
function memory(): void {
  const text = generateScore(1000 * KB);
  let tree = parseFile(generateScore(10 * KB, 2));
  const ofTree = kept(() => (tree = parseFile(text)));
  const environment = buildEnvironment(FILE, tree, []);
  const ofScore = kept(() => buildScore(FILE, tree, environment, written('note')));
  const each = (bytes: number): string => `${(bytes / text.length).toFixed(1)} B`;
  print('Memory a character, of 1 MB; limit 45 B', [
    { what: 'tree', measured: each(ofTree), ratio: ofTree / text.length / 45, wished: 1 },
    { what: 'score as written', measured: each(ofScore), ratio: ofScore / text.length / 45, wished: 1 },
  ]);
}

function stages(): void {
  const text = generateScore(100 * KB);
  const stylesheet = openStylesheet(generateStylesheet(100 * KB));
  const tree = parseFile(text);
  const environment = buildEnvironment(FILE, tree, []);
  const took = medians(
    {
      stylesheetParse: () => parseStylesheet(stylesheet),
      stylesheetProof: () => proofStylesheet(stylesheet),
      parse: () => parseFile(text),
      environment: () => buildEnvironment(FILE, tree, []),
      score: () => buildScore(FILE, tree, environment, written('note')),
      proof: () => proof(text),
    },
    ROUNDS,
  );
  print('100 kB: stylesheet and score', [
    { what: 'stylesheet: parse', measured: ms(took.stylesheetParse) },
    { what: 'stylesheet: parse and lint', measured: ms(took.stylesheetProof) },
    {
      what: 'score: lex and parse, to the stylesheet’s parse',
      measured: ms(took.parse),
      ratio: took.parse / took.stylesheetParse,
      wished: 0.6,
    },
    { what: 'score: declarations, to the proof', measured: ms(took.environment), ratio: took.environment / took.proof },
    { what: 'score: one choice, to the proof', measured: ms(took.score), ratio: took.score / took.proof },
    {
      what: 'score: proof, to the stylesheet’s parse and lint',
      measured: ms(took.proof),
      ratio: took.proof / took.stylesheetProof,
      wished: 1,
    },
  ]);
}

/** A file eight times as long takes eight times as long. */
function growth(): void {
  const small = generateScore(500 * KB);
  const large = generateScore(4000 * KB);
  const took = medians(
    {
      small: () => proof(small),
      large: () => proof(large),
      smallParse: () => parseFile(small),
      largeParse: () => parseFile(large),
    },
    5,
    1,
  );
  const eachKb = (time: number, text: string): number => (time / text.length) * KB;
  const grown = (what: string, few: number, many: number): void =>
    print(`Time for a kB, ${what} (medians of 5)`, [
      { what: '500 kB', measured: ms(eachKb(few, small)) },
      { what: '4 MB', measured: ms(eachKb(many, large)), ratio: eachKb(many, large) / eachKb(few, small), wished: 1.5 },
    ]);
  grown('parse', took.smallParse, took.largeParse);
  grown('proof', took.small, took.large);
}

const parts: Readonly<Record<string, () => void>> = { memory, stages, growth };
const [wanted = Object.keys(parts)] = process.argv.slice(2).map((words) => words.split(','));
for (const part of wanted) parts[part]?.();
