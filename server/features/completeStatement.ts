/** What can be typed in a statement or change: whatever its vocabulary expects where the text breaks off. */
import { type Expected, expectedInStatement, parseStatement } from '../../grammar/statements/parser';
import { allOf, clausesOf } from '../../grammar/statements/read';
import type { Argument } from '../../grammar/tree';
import { clefNames, MOST_LINES } from '../../grammar/vocabulary/clefs';
import { meterSigns } from '../../grammar/vocabulary/meters';
import type { ClauseEntry, Clauses, FreePart, Part } from '../../grammar/vocabulary/parts';
import { shapeInWords, shapes } from '../../grammar/vocabulary/shapes';
import { valueNames } from '../score/amounts';
import type { Project } from '../workspace/project';
import { completeRecipe } from './completeRecipe';
import { type Space, spaces, spacesOf } from './names';
import { described, KINDS, knownNames, labels, namesOf, type Proposal } from './proposal';
import { linesOf } from './staveLines';

/** The word at whose end the caret stands: it is typed anew. */
const wordBefore = (text: string): string => /[^\s,"()=]*$/.exec(text)?.[0] ?? '';

/** @param before the statement's text before the caret */
export function completeStatement(project: Project, before: string): Proposal[] {
  const word = wordBefore(before);
  // Of a list every member is expected alike.
  const text = before.slice(0, before.length - word.length).replace(/[^\s"]+,$/, '');
  const expected = expectedInStatement(text);
  const said = namesSaid(project, text, before.slice(text.length, before.length - word.length));
  const asking = { project, replaces: word.length, lines: linesOf(project, undefined), text, said };
  return [...clefAfterStave(asking, expected), ...proposalsOf(asking, expected)];
}

type Said = (space: Space, name: string) => boolean;

/** Whether it is the name that a statement gives, or stands in its list already: neither is cited there again. */
function namesSaid(project: Project, text: string, list: string): Said {
  const given = allOf(parseStatement(text, []).statement.args, 'name').filter(({ declares }) => declares);
  const listed = new Set(list.split(','));
  const isGiven = (space: Space, name: string): boolean =>
    given.some((one) => one.text === name && spacesOf(project, { space: spaces[one.role], name }).includes(space));
  return (space, name) => listed.has(name) || isGiven(space, name);
}

/** Who asks, and where. */
interface Asking {
  readonly project: Project;
  /** So many signs before the caret are typed anew. */
  readonly replaces: number;
  /** Lines of the stave on which a clef would stand. */
  readonly lines: number;
  /** What the statement or change says before the word that is typed. */
  readonly text: string;
  /** Whether a name cannot be meant. */
  readonly said?: Said;
}

export const proposalsOf = (asking: Asking, expected: readonly Expected[]): Proposal[] =>
  expected.flatMap((one) => proposalsFor(asking, one));

function proposalsFor(asking: Asking, expected: Expected): readonly Proposal[] {
  const { replaces } = asking;
  const keyword = (label: string, documentation: string): Proposal[] => [
    { label, kind: KINDS.Keyword, replaces, documentation },
  ];
  switch (expected.kind) {
    case 'word':
      return keyword(expected.word, expected.describe);
    case 'part':
      return ofPart(asking, expected.part, expected.before);
    case 'clauses':
      return ofClauses(asking, expected.clauses);
    case 'row': {
      const { word, describe, parts } = expected.row;
      return word === undefined
        ? parts.slice(0, 1).flatMap((part) => ofPart(asking, part, []))
        : keyword(word, describe);
    }
    case 'recipe':
      return completeRecipe(asking.text.slice(asking.text.lastIndexOf('\n') + 1), replaces);
  }
}

function ofPart(asking: Asking, part: Part, before: readonly Argument[]): readonly Proposal[] {
  if (part.kind === 'words') return described(part.words, asking.replaces, KINDS.EnumMember);
  if (part.kind === 'either')
    return part.forms.flatMap(([first]) => (first === undefined ? [] : ofPart(asking, first, before)));
  return freely[part.take]?.(asking, part, before) ?? [];
}

type Freely = (asking: Asking, part: FreePart, before: readonly Argument[]) => readonly Proposal[];

const names: Freely = ({ project, replaces, said }, { role = 'shape', declares }) => {
  // Instruments are called after types as a rule; all other names are new ones.
  if (declares && role !== 'instrument') return [];
  const readings = project.environment.readings.map(({ name }) => name);
  const known =
    role === 'reading' ? namesOf(project, 'label', readings, replaces) : knownNames(project, spaces[role], replaces);
  return known.filter(({ label }) => said?.(spaces[role], label) !== true);
};

const listed: Freely = ({ project, replaces, said }) =>
  namesOf(project, 'label', labels(project), replaces).filter(({ label }) => said?.('label', label) !== true);

const clefs: Freely = ({ project, replaces, lines }, _part, before) => {
  const stave = before.find((arg) => arg.kind === 'name')?.text;
  return clefsFor(stave === undefined ? lines : linesOf(project, stave), replaces);
};

/** The clefs that fit a stave: those with a name of their own first, then all others of its lines. */
function clefsFor(lines: number, replaces: number): Proposal[] {
  const places = ['G', 'C', 'F'].flatMap((letter) =>
    Array.from({ length: Math.min(lines, MOST_LINES) }, (_, index) => `${letter}${index + 1}`),
  );
  return places
    .map((label) => ({ label, kind: KINDS.Constant, replaces, detail: clefNames[label] }))
    .sort((a, b) => Number(b.detail !== undefined) - Number(a.detail !== undefined));
}

const values: Freely = ({ replaces }) =>
  valueNames.map(([part, name]) => ({ label: `${part}`, kind: KINDS.Value, replaces, detail: name }));

const FEW = 8;

/** Few numbers can be shown. */
const numbers: Freely = ({ replaces }, { range, what }) =>
  range === undefined || range.high - range.low >= FEW
    ? []
    : Array.from({ length: range.high - range.low + 1 }, (_, index) => ({
        label: `${range.low + index}`,
        kind: KINDS.Value,
        replaces,
        detail: what,
      }));

const example =
  (...examples: readonly string[]): Freely =>
  ({ replaces }, { what }) =>
    examples.map((label) => ({ label, kind: KINDS.Value, replaces, detail: what }));

/** What can be proposed for a part that is filled in freely; for the others there is nothing to choose from. */
const freely: Readonly<Partial<Record<FreePart['take'], Freely>>> = {
  name: names,
  names: listed,
  shapes: ({ replaces }) =>
    shapes.map((shape) => ({ label: shape.short, kind: KINDS.Event, replaces, detail: shapeInWords(shape) })),
  clef: clefs,
  meter: ({ replaces }) => described(meterSigns, replaces, KINDS.Constant),
  value: values,
  whole: numbers,
  keySign: example('bb', 'eb', 'ab', 'f#', 'c#', 'g#', 'bn'),
  pitchOfA: example('a4'),
  shares: example('3:2', '2:1', '7:5'),
  commaPart: example('1/4', '1/5', '1/6', '2/7', '1/3'),
  tempering: example('-1/4', '-1/6', '+1/4'),
  compass: example('c2-c6', 'c2-e6', 'g1-e6', 'f1-f6'),
  fifth: example('g#-eb'),
};

/** How a clause begins that has no word of its own. */
const beginnings: Readonly<Record<NonNullable<ClauseEntry['opens']>, (asking: Asking) => Proposal[]>> = {
  ':': ({ replaces }) => [{ label: ':', kind: KINDS.Operator, replaces, insert: ': "$1"', isSnippet: true }],
  clef: ({ replaces, lines }) => clefsFor(lines, replaces),
  staveAndClef: ({ project, replaces, text }) => {
    const said = clausesOf(parseStatement(text, []).statement, 'clef').flatMap(({ args }) => allOf(args, 'name'));
    return knownNames(project, 'stave', replaces).filter(({ label }) => said.every((one) => one.text !== label));
  },
};

const ofClauses = (asking: Asking, clauses: Clauses): Proposal[] =>
  Object.entries(clauses).flatMap(([label, { opens, describe }]) =>
    opens === undefined
      ? [{ label, kind: KINDS.Property, replaces: asking.replaces, documentation: describe }]
      : beginnings[opens](asking),
  );

function clefAfterStave({ project, replaces, text }: Asking, expected: readonly Expected[]): Proposal[] {
  const stave = staveBeforeClef(project, text, expected);
  return stave === undefined ? [] : clefsFor(linesOf(project, stave), replaces);
}

/** The name of a stave with which the text of a head ends: its clef is meant to follow. */
export function staveBeforeClef(
  { environment }: Project,
  text: string,
  expected: readonly Expected[],
): string | undefined {
  const isHead = expected.some((one) => one.kind === 'clauses' && one.clauses.clef?.opens === 'staveAndClef');
  const inPart = expected.some(({ kind }) => kind === 'part');
  const last = /(\w+)[ \t]+$/.exec(text)?.[1];
  return isHead && !inPart ? environment.staves.find(({ name }) => name === last)?.name : undefined;
}
