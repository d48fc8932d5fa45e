/** Statements, heads and changes in words: their parts by the vocabulary, clefs, meters and pitches. */
import type { Argument, Clef } from '../../grammar/tree';
import { clefLetters, clefNames, clefText } from '../../grammar/vocabulary/clefs';
import { meterOf } from '../../grammar/vocabulary/meters';
import { ALTERATIONS } from '../../grammar/vocabulary/pitches';
import { changes, lookUp, statements } from '../../grammar/vocabulary/statements';
import { bothNames, noteOnLine } from '../score/pitchNames';
import type { KeySign } from '../score/score';
import type { Project } from '../workspace/project';
import { systemOf } from './events';
import { namesAt } from './nameWords';
import type { Here, Node } from './nodes';
import { linesOf, linesUnder } from './staveLines';
import { valueInWords } from './words';

type Told = readonly string[];

const nothing: Told = [];

export const described = (entry: { readonly describe: string } | undefined): Told =>
  entry === undefined ? nothing : [entry.describe];

/** An argument of a statement, clause or change. @param around all that it lies in, the outermost first */
export function argumentInWords(
  project: Project,
  here: Here,
  node: Node & { what: 'argument' },
  around: readonly Node[],
): Told {
  const { argument } = node;
  switch (argument.kind) {
    case 'name':
    case 'names':
      return namesAt(project, here);
    case 'clef':
      return clefsInWords(argument.clefs, linesHere(project, here, around));
    case 'pitch':
      return pitchInWords(argument, signatureAfter(project, here));
    case 'value':
      return [valueInWords(argument.form)];
    case 'word':
      return isMeter(around) ? meterInWords(argument.text) : nothing;
    default:
      return nothing;
  }
}

const isMeter = (around: readonly Node[]): boolean =>
  around.some((node) => node.what === 'clause' && node.clause.name === 'meter');

function pitchInWords({ spelling }: Argument & { kind: 'pitch' }, signature: readonly KeySign[]): Told {
  const { letter, octave, accidental } = spelling;
  if (octave === undefined) return nothing;
  const drawn = signature.find((sign) => sign.letter === letter && (sign.octave ?? octave) === octave);
  const sign = accidental ?? drawn?.accidental ?? 'n';
  return [bothNames({ letter, octave, alteration: ALTERATIONS[sign] })];
}

/** The signature in force where a lane ends, which is where a custos stands; none of what is no lane. */
function signatureAfter(project: Project, { holder, blockIndex }: Here): readonly KeySign[] {
  const score = holder.kind === 'lane' ? systemOf(project, blockIndex)?.system.score : undefined;
  const events = score?.voices.flatMap((voice) => voice.events) ?? [];
  const last = events.findLast(({ source }) => source.lane === holder.index);
  return score?.carryOut.keys[last?.stave ?? -1] ?? [];
}

/** Lines of the stave on which a clef stands: the one that its clause names, or that of the lane. */
function linesHere(project: Project, { holder }: Here, around: readonly Node[]): number {
  const clause = around.flatMap((node) => (node.what === 'clause' ? [node.clause] : [])).at(-1);
  const [stave] = clause?.args ?? [];
  return stave?.kind === 'name' ? linesOf(project, stave.text) : linesUnder(project, holder);
}

/** Each clef with the note of every line, from the highest. */
function clefsInWords(clefs: readonly Clef[], staveLines: number): Told {
  return clefs.map((clef) => {
    const text = clefText(clef);
    const lines = Math.max(staveLines, clef.line);
    const notes = Array.from({ length: lines }, (_, index) => {
      const line = lines - index;
      return `- line ${line}: ${bothNames(noteOnLine(clef, line))}${line === clef.line ? ', where the clef stands' : ''}`;
    });
    const [name, { describe }] = [clefNames[text], clefLetters[clef.letter]];
    return `**${text}** ${name === undefined ? describe : `${name} (${describe})`}\n${notes.join('\n')}`;
  });
}

function meterInWords(sign: string): Told {
  const meter = meterOf(sign);
  return meter === undefined
    ? nothing
    : [`**${sign}** ${meter.describe}; a bar is ${meter.beats}/${meter.beatValue} of a semibreve`];
}

/** A clause by the vocabulary of the statement or change around it, where its own word is pointed at. */
export function clauseInWords(here: Here, node: Node & { what: 'clause' }, around: readonly Node[]): Told {
  const { name } = node.clause;
  if (here.pos > node.pos + name.length) return nothing;
  const root = around[0];
  const entry = root?.what === 'statement' ? lookUp(statements, root.statement.keyword) : changes.now;
  return described(entry === undefined ? undefined : lookUp(entry.clauses, name));
}
