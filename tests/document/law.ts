/** The law of documents: after any edits a document says what a fresh analysis of its text says. */

import { finished } from '../../grammar/finished';
import { parseFile } from '../../grammar/parse';
import { checkFile } from '../../server/checks';
import type { Analysis } from '../../server/document/analysis';
import { Document } from '../../server/document/document';
import { Findings, sifted } from '../../server/document/findings';
import { choiceNames, choiceOf } from '../../server/readings/choices';
import { PlaceDecisions } from '../../server/readings/places';
import { buildScore } from '../../server/score/build';
import { buildEnvironment } from '../../server/score/environment';
import { edited, oneOf, type Random, randomFrom, SYSTEM_START } from '../fuzz/edits';

const DECLARATIONS: readonly string[] = [
  'title "Another title"',
  'source M "a third leaf"',
  'reading bare "without anything"\n  takes L\n  accidentals bar',
  'reading late from bare\n  at v3 takes K',
  'accidentals bar',
  'accidentals group',
  'signs anglebert-1689',
  'beaming 8 by 2',
  'note n7 kind reading\n  text "seen so"',
  'stave middle lines 6',
  'voice quinte middle',
  'order A B A',
  'section B',
  'piece "the second"',
  'page "9"',
  'tempo 4 at 60',
  'instrument harpsichord compass g1-d6',
];

/** Does something to a line that declares, or puts one where a system begins. */
function declared(text: string, random: Random): string {
  const statement = oneOf(random, DECLARATIONS);
  const lines = text.split('\n');
  const at = random(2) === 0 ? random(Math.min(lines.length, 15)) : random(lines.length);
  lines.splice(at, random(3) === 0 ? 1 : 0, statement);
  return lines.join('\n');
}

/** Takes a system away, writes one twice, or lets two change places. */
function withSystems(text: string, random: Random): string {
  const [head = '', ...systems] = text.split(SYSTEM_START);
  const [at, other] = [random(systems.length + 1), random(systems.length + 1)];
  const [one = '', two = ''] = [systems[at], systems[other]];
  const does = random(3);
  if (does === 0) systems.splice(at, 1);
  else if (does === 1) systems.splice(other, 0, one);
  else [systems[at], systems[other]] = [two, one];
  return [head, ...systems].join('');
}

/** The texts of an edit script: seeds one after another take the sources in turn; one step in five takes back some before it. */
export function* scriptOf(seed: number, sources: readonly string[], steps: number): Generator<string> {
  const random = randomFrom(seed);
  const history = [sources[seed % sources.length] ?? ''];
  yield history[0] ?? '';
  for (let step = 0; step < steps; step++) {
    const now = history.at(-1) ?? '';
    const does = random(10);
    if (does < 2 && history.length > 1) history.length -= 1 + random(Math.min(3, history.length - 1));
    else if (does < 4) history.push(withSystems(now, random));
    else if (does < 6) history.push(declared(now, random));
    else history.push(edited(now, random));
    yield history.at(-1) ?? '';
  }
}

const plain = (_: string, value: unknown): unknown =>
  typeof value === 'bigint' ? `${value}n` : value instanceof Map || value instanceof Set ? [...value] : value;

/** An analysis in which nothing is kept and nothing shared: every choice's systems are built by themselves. */
function freshly(file: string, text: string): Analysis {
  const tree = parseFile(text);
  const environment = buildEnvironment(file, tree, []);
  const choices = choiceNames(environment);
  const alone = new Map(
    choices.flatMap((name) => {
      const choice = choiceOf(environment, name);
      return choice === undefined ? [] : [[name, choice] as const];
    }),
  );
  const decided = new PlaceDecisions().decide(tree, environment, alone);
  const scores = new Map([...decided].map(([name, choice]) => [name, buildScore(file, tree, environment, choice)]));
  const all = [...scores.values()];
  const problems = [
    { choice: undefined, problems: environment.problems },
    ...all.map((score) => ({ choice: score.choice.name, problems: score.problems })),
    ...checkFile({ tree, environment }, all),
  ];
  const findings = sifted(finished(new Findings({ now: 0 }).making({ file, tree }, problems, choices)), [], {});
  return {
    file,
    tree,
    environment,
    choices: [...scores.keys()],
    score: (name) => scores.get(name),
    findings: () => findings,
    *proofing() {
      yield;
      return findings;
    },
  };
}

/** All that an analysis says, part by part, as canonical JSON. */
function* told(analysis: Analysis): Generator<readonly [string, string]> {
  yield ['tree', JSON.stringify(analysis.tree.blocks, plain)];
  yield ['environment', JSON.stringify(analysis.environment, plain)];
  for (const choice of analysis.choices) {
    const { pieces, problems } = analysis.score(choice) ?? { pieces: [], problems: [] };
    yield [`score of ${choice}`, JSON.stringify([pieces, problems], plain)];
  }
  yield ['findings', JSON.stringify(analysis.findings(), plain)];
}

/** Where the two first differ, with what stands around it. */
function difference(a: string, b: string): string {
  let at = 0;
  while (at < a.length && a[at] === b[at]) at++;
  const around = (text: string): string => text.slice(Math.max(at - 120, 0), at + 80);
  return `kept:  ${around(a)}\nfresh: ${around(b)}`;
}

/** Updates a document with a text; throws an error that says in what it differs from a fresh analysis of it. */
export function updateLawfully(document: Document, text: string): void {
  const fresh = told(freshly(document.file, text));
  for (const [part, kept] of told(document.update(text))) {
    const [freshPart, said] = fresh.next().value ?? ['', ''];
    if (part !== freshPart || kept !== said) throw new Error(`${part} differs\n${difference(kept, said)}`);
  }
}

/** Runs an edit script; throws an error with the text at which the law fails. Gives the number of edits. */
export function keepsLaw(seed: number, sources: readonly string[], steps: number): number {
  const document = new Document('edited.bent');
  let edits = 0;
  for (const text of scriptOf(seed, sources, steps)) {
    try {
      updateLawfully(document, text);
    } catch (error) {
      const why = error instanceof Error ? (error.stack ?? error.message) : String(error);
      throw new Error(`seed ${seed}, edit ${edits}: ${why}\n${JSON.stringify(text)}`);
    }
    edits++;
  }
  return edits - 1;
}
