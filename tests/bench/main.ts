/** `npm run bench`: times and memory of the core, each beside something measured in the same run. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseFile } from '../../grammar/parse';
import { Document } from '../../server/document/document';
import type { Engraver } from '../../server/engraving/engraver';
import { choiceOf } from '../../server/readings/choices';
import { perform } from '../../server/readings/perform';
import { buildScore } from '../../server/score/build';
import { written } from '../../server/score/choice';
import { buildEnvironment } from '../../server/score/environment';
import { noFiles } from '../../server/workspace/host';
import { projectOf } from '../../server/workspace/project';
import { pictureTimes } from './engraving';
import { featureTimes } from './features';
import { generateScore } from './generateScore';
import { layouts, typedIn } from './keystrokes';
import { kept, keptLater, medians, ms, print } from './measure';
import { startTimes } from './start';
import { generateStylesheet, openStylesheet, parseStylesheet, proofStylesheet } from './stylesheet';

const KB = 1000;
const ROUNDS = 30;
const FILE = 'measure.bent';

const proof = (text: string): unknown => projectOf(noFiles, FILE, text).analysis.findings();

/** Tree and score of a megabyte; before all else, when nothing is kept yet. */
async function memory(): Promise<void> {
  const text = generateScore(1000 * KB);
  let tree = parseFile(generateScore(10 * KB, 2));
  const ofTree = kept(() => (tree = parseFile(text)));
  const environment = buildEnvironment(FILE, tree, []);
  const ofScore = kept(() => buildScore(FILE, tree, environment, written('note')));
  const document = new Document(FILE);
  const ofDocument = await keptLater(() => document.update(text));
  const each = (bytes: number): string => `${(bytes / text.length).toFixed(1)} B`;
  print('Memory a character, of 1 MB; limit 45 B', [
    { what: 'tree', measured: each(ofTree), ratio: ofTree / text.length / 45, wished: 1 },
    { what: 'score as written, with its events', measured: each(ofScore) },
    {
      what: `open document: tree, ${document.current?.choices.length} scores, what looks found; events let go`,
      measured: each(ofDocument),
      ratio: ofDocument / text.length / 45,
      wished: 1,
    },
  ]);
}

function stages(): void {
  const text = generateScore(100 * KB);
  const stylesheet = openStylesheet(generateStylesheet(100 * KB));
  const tree = parseFile(text);
  const environment = buildEnvironment(FILE, tree, []);
  const witness = buildScore(FILE, tree, environment, choiceOf(environment, 'K') ?? written('note'));
  // Two by two: what a third task leaves behind would be collected, and its code compiled, in the time of these.
  const parses = medians({ stylesheet: () => parseStylesheet(stylesheet), score: () => parseFile(text) }, ROUNDS);
  const proofs = medians({ stylesheet: () => proofStylesheet(stylesheet), score: () => proof(text) }, ROUNDS);
  const stage = medians(
    {
      environment: () => buildEnvironment(FILE, tree, []),
      score: () => buildScore(FILE, tree, environment, written('note')),
      proof: () => proof(text),
    },
    ROUNDS,
  );
  // Apart from the stylesheet: played events have other shapes and times than those that a proof has compiled for.
  const signs = medians(
    {
      proof: () => proof(text),
      played: () => perform(witness, { rhythm: 'written' }),
      plain: () => perform(witness, { rhythm: 'written', ornaments: 'sign' }),
    },
    ROUNDS,
  );
  print('100 kB: stylesheet and score', [
    { what: 'stylesheet: parse', measured: ms(parses.stylesheet) },
    { what: 'stylesheet: parse and lint', measured: ms(proofs.stylesheet) },
    {
      what: 'score: lex and parse, to the stylesheet’s parse',
      measured: ms(parses.score),
      ratio: parses.score / parses.stylesheet,
      wished: 0.6,
    },
    {
      what: 'score: declarations, to the proof',
      measured: ms(stage.environment),
      ratio: stage.environment / stage.proof,
    },
    { what: 'score: one choice, to the proof', measured: ms(stage.score), ratio: stage.score / stage.proof },
    {
      what: 'score: proof, to the stylesheet’s parse and lint',
      measured: ms(proofs.score),
      ratio: proofs.score / proofs.stylesheet,
      wished: 1,
    },
    {
      what: 'score: one choice played without its signs, to the proof',
      measured: ms(signs.plain),
      ratio: signs.plain / signs.proof,
    },
    {
      what: 'score: its signs realised, beyond that, to the proof in turns with it',
      measured: ms(signs.played - signs.plain),
      ratio: (signs.played - signs.plain) / signs.proof,
      wished: 1,
    },
  ]);
}

/** What compass, hands and tuning cost a proof: the same score with and without them. */
function instruments(): void {
  const bare = generateScore(100 * KB);
  const stated = 'instrument harpsichord  compass g1-d6\ntuning meantone 1/4 wolf g#-eb\n';
  const played = bare.replace('\nstave upper', `\n${stated}\nstave upper`);
  const took = medians({ parse: () => parseFile(bare), bare: () => proof(bare), played: () => proof(played) }, ROUNDS);
  const cost = took.played - took.bare;
  print('Compass, hands and tuning of 100 kB', [
    { what: 'parse and proof without an instrument', measured: ms(took.parse + took.bare) },
    { what: 'proof with an instrument in meantone', measured: ms(took.played) },
    {
      what: 'compass, hands and tuning, to parse and proof without them',
      measured: ms(cost),
      ratio: cost / (took.parse + took.bare),
      wished: 1,
    },
  ]);
}

/** What a reading with every practice of rhythm costs when it is played. */
function rhythm(): void {
  const text = generateScore(100 * KB).replace('\nstave upper', `\n${PRACTISED}\nstave upper`);
  const tree = parseFile(text);
  const environment = buildEnvironment(FILE, tree, []);
  const choice = choiceOf(environment, 'practised') ?? written('note');
  const score = buildScore(FILE, tree, environment, choice);
  const took = medians(
    {
      both: () => [parseFile(text), proof(text)],
      read: () => buildScore(FILE, tree, environment, choice),
      played: () => perform(score, { ornaments: 'sign' }),
    },
    ROUNDS,
  );
  const moved = perform(score, { ornaments: 'sign' }).pieces.flatMap(({ events }) => events);
  const share = moved.filter(({ altered }) => altered !== undefined).length / moved.length;
  print(`A reading with five practices of rhythm, 100 kB; they move ${Math.round(share * 100)} % of its events`, [
    { what: 'parse and proof', measured: ms(took.both) },
    {
      what: 'the reading built and played in time, to parse and proof',
      measured: ms(took.read + took.played),
      ratio: (took.read + took.played) / took.both,
      wished: 1,
    },
  ]);
}

const PRACTISED = `reading practised
  practice overdot
  practice inegal 8 2:1
  practice assimilate triplet
  practice snap
  practice upbeats late`;

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
  const grown = (what: string, ofSmall: number, ofLarge: number): void => {
    const [few, many] = [eachKb(ofSmall, small), eachKb(ofLarge, large)];
    print(`Time for a kB, ${what} (medians of 5)`, [
      { what: '500 kB', measured: ms(few) },
      { what: '4 MB', measured: ms(many), ratio: many / few, wished: 1.5 },
    ]);
  };
  grown('parse', took.smallParse, took.largeParse);
  grown('proof', took.small, took.large);
}

/** The text with a head of a system in the place of the one at an offset. */
const headAt = (text: string, at: number, head: string): string =>
  `${text.slice(0, at)}\nsystem${head}${text.slice(at + '\nsystem'.length)}`;

/** One bar changed in an open document, where the change reaches no further system and where it reaches ten. */
function edits(): void {
  const original = generateScore(100 * KB);
  const middle = original.indexOf('\nsystem', original.length / 2);
  let tenth = middle;
  for (let count = 0; count < 10; count++) tenth = original.indexOf('\nsystem', tenth + 1);
  // A clef reaches until the next is drawn.
  const text = headAt(original, tenth, '  upper G2');
  const bar = text.indexOf('| ', middle) + '| '.length;
  const clefs = ['C1', 'C2', 'C3', 'G1', 'C4'];
  // No version is like one of the last few, which a document still knows.
  const near = (count: number): string => `${text.slice(0, bar)}"${count}" ${text.slice(bar)}`;
  const far = (count: number): string => headAt(text, middle, `  upper ${clefs[count % clefs.length]}`);
  const built: Record<string, number> = {};
  const open = (name: string, version: (count: number) => string): (() => unknown) => {
    const document = new Document(FILE);
    let count = 0;
    return () => {
      const findings = document.update(version(count++)).findings();
      built[name] = document.stats.built;
      return findings;
    };
  };
  const fresh = (): unknown => new Document(FILE).update(text).findings();
  const took = medians({ fresh, near: open('near', near), far: open('far', far) }, ROUNDS);
  print('One changed bar in an open document of 100 kB', [
    { what: 'the whole anew', measured: ms(took.fresh) },
    {
      what: `the same carry (${built.near} systems built, choices together)`,
      measured: ms(took.near),
      ratio: took.near / took.fresh,
      wished: 1 / 30,
    },
    {
      what: `a clef for ten systems (${built.far} systems built)`,
      measured: ms(took.far),
      ratio: took.far / took.fresh,
      wished: 1 / 10,
    },
  ]);
}

/** The bundles lie where run.mjs says. */
function start(): void {
  const { BENCH_FOLDER = '' } = process.env;
  print('Start, each in a process of its own', startTimes(BENCH_FOLDER, 'dist/cli.js', ROUNDS));
}

function keystrokes(): void {
  const columns = ['heads', 'keys', 'a head', 'of words', 'of music', ...layouts.map(({ name }) => name)];
  console.log('\nKeys a drawn note head; beside them how often Shift, AltGr or the key after a dead one is pressed');
  console.log(`  ${'sample'.padEnd(18)}${columns.map((head) => head.padStart(9)).join('')}`);
  for (const name of readdirSync('samples').filter((file) => file.endsWith('.bent'))) {
    const { heads, keys, words, modifiers } = typedIn(readFileSync(`samples/${name}`, 'utf8'));
    const each = [keys, words, keys - words, ...modifiers].map((count) => (count / heads).toFixed(2).padStart(9));
    console.log(`  ${name.padEnd(18)}${`${heads}`.padStart(9)}${`${keys}`.padStart(9)}${each.join('')}`);
  }
}

/** The engraver lies where the build has put it. */
async function builtEngraver(): Promise<Engraver> {
  const { loadEngraver } = await import(join(process.cwd(), 'dist/engraving/engraver.js'));
  return loadEngraver(readFileSync('dist/engraving/font.zip'));
}

/** What the editor waits for: a whole client and server, asked over a connection. */
async function features(): Promise<void> {
  const [score, stylesheet] = [generateScore(100 * KB), generateStylesheet(100 * KB)];
  const lines = await featureTimes(score, stylesheet, await builtEngraver(), ROUNDS);
  print('Language server on 100 kB, client and messages included; the stylesheet is asked without messages', lines);
}

async function engraving(): Promise<void> {
  const engraver = await builtEngraver();
  const tree = parseFile(generateScore(100 * KB));
  const score = buildScore(FILE, tree, buildEnvironment(FILE, tree, []), written('note'));
  print('Pictures of a score of 100 kB', pictureTimes(score, engraver));
}

const parts: Readonly<Record<string, () => void | Promise<void>>> = {
  memory,
  stages,
  instruments,
  rhythm,
  growth,
  edits,
  start,
  keystrokes,
  engraving,
  features,
};
const [wanted = Object.keys(parts)] = process.argv.slice(2).map((words) => words.split(','));
async function run(): Promise<void> {
  for (const part of wanted) await parts[part]?.();
}

run().catch((error: unknown) => {
  console.error(error);
  process.exitCode = 1;
});
