/** What can be typed in a lane, told by the signs before the caret. */
import { expectedInChange } from '../../grammar/statements/parser';
import { laneMeanings, markMeanings, markPlaces, spanMeanings } from '../../grammar/vocabulary/lanes';
import { shapeInWords, shapes } from '../../grammar/vocabulary/shapes';
import { changes } from '../../grammar/vocabulary/statements';
import { valueNames } from '../score/amounts';
import type { Environment } from '../score/environment';
import { tablesNamed } from '../signs/rows';
import { rowsWithInherited, signTableByName } from '../signs/tables';
import type { Project } from '../workspace/project';
import { proposalsOf } from './completeStatement';
import type { Here } from './nodes';
import { described, KINDS, knownNames, labels, namesOf, type Proposal } from './proposal';
import { linesUnder } from './staveLines';

interface Asked {
  readonly project: Project;
  readonly here: Here;
  /** The word before the caret, which is typed anew. */
  readonly word: string;
  /** The lane's text before the caret. */
  readonly before: string;
}

/** Contexts in the order in which they are tried; the last group of each pattern is the word before the caret. */
const contexts: readonly (readonly [RegExp, (asked: Asked) => readonly Proposal[]])[] = [
  [/[^\s']'\[?(\w*)$/, signs],
  [/[^\s']'\[?[\w.#]+\]?[?+]*\((?:[\w ]*\s)?(\w*)$/, parameters],
  [/(?:'[^\s'|]*|\]|=\??|\{[^\s{}]*)(?<!\s):!?(?:[\w.]+,)*([\w.]*)$/, limits],
  [/[^\s*]\*(\w*)$/, ({ project, word }) => knownNames(project, 'note', word.length)],
  [/<(?:\w+(?:\*\w+)*[ \t]+)?(?:[\w.]+\??,)*([\w.]*)$/, options],
  [/;[ \t]*(?:[\w.]+\??,)*([\w.]*)$/, options],
  [/\{(\w*)$/, ({ word }) => [...tuplets(word.length), ...described(spanMeanings, word.length)]],
  [/(?:^|\s)\((\w*)$/, ({ word }) => changesAndWords(word.length)],
  [/(?:^|\s)\([^()]*[ \t]([^\s()]*)$/, inChange],
];

/** Words of the source are put above or below with the same bracket as a change. */
const wordPlaces = { above: 'Words above the next event.', below: 'Words below the next event.' };

const standsAlone = (word: string): boolean => {
  const change = changes[word];
  return change !== undefined && change.parts.length === 0 && Object.keys(change.clauses).length === 0;
};

/** A word that must go on comes with its space. */
const changesAndWords = (replaces: number): Proposal[] =>
  described({ ...changes, ...wordPlaces }, replaces).map((one) =>
    standsAlone(one.label) ? one : { ...one, insert: `${one.label} ` },
  );

export function completeLane(project: Project, here: Here, triggered: boolean): readonly Proposal[] {
  const before = here.holder.placed.tree.text.slice(0, here.pos);
  for (const [pattern, propose] of contexts) {
    const match = pattern.exec(before);
    if (match !== null) return propose({ project, here, before, word: match.at(-1) ?? '' });
  }
  // Notes are typed fast: between them nothing comes unasked, not even for the letter of a note.
  return triggered || !/(?:^|\s)$/.test(before) ? [] : between();
}

// ─── signs ───────────────────────────────────────────────────────────────────────────────────────────────────────

/** Names of the chosen tables, then shapes, then what is no sign; of the tables that nobody chose nothing. */
function signs({ project: { environment }, word }: Asked): Proposal[] {
  const replaces = word.length;
  const called = namesInTables(environment).map(({ name, label, table }) => ({
    label: name,
    kind: KINDS.Event,
    replaces,
    detail: `${label}, ${table}`,
    sign: name,
  }));
  const drawn = shapes.map((shape) => ({
    label: shape.short,
    kind: KINDS.Event,
    replaces,
    detail: shapeInWords(shape),
    filter: `${shape.short} ${shape.name}`,
    sign: shape.short,
  }));
  return [...called, ...drawn, ...described(markMeanings, replaces, KINDS.Operator)];
}

interface Named {
  readonly name: string;
  readonly label: string;
  readonly table: string;
}

function namesInTables(environment: Environment): Named[] {
  const own = environment.tables.flatMap(({ name: table, rows }) =>
    rows.map(({ name, shapes: drawn }) => ({ name, label: drawn.join('+'), table })),
  );
  const builtIn = tablesNamed(environment).flatMap((table) => {
    const found = signTableByName(table);
    return (found === undefined ? [] : rowsWithInherited(found)).flatMap(({ names, label }) =>
      names.map((name) => ({ name, label, table })),
    );
  });
  return [...new Map([...own, ...builtIn].reverse().map((one) => [one.name, one])).values()].reverse();
}

/** Where a sign is drawn, and the rival readings that its tables tell of. */
function parameters({ project: { environment }, before, word }: Asked): Proposal[] {
  const name = /'\[?(\w+)[^']*$/.exec(before)?.[1] ?? '';
  const rivals = tablesNamed(environment).flatMap((table) => {
    const found = signTableByName(table);
    const rows = found === undefined ? [] : rowsWithInherited(found);
    return rows
      .filter(({ names, shapes: drawn }) => names.includes(name) || drawn.join() === name)
      .flatMap((row) => row.rivals ?? []);
  });
  return [
    ...rivals.map((rival) => ({
      label: rival.name,
      kind: KINDS.EnumMember,
      replaces: word.length,
      documentation: `\`${rival.recipe}\`\n\n${rival.advocates}`,
    })),
    ...described(markPlaces, word.length),
  ];
}

// ─── readings ────────────────────────────────────────────────────────────────────────────────────────────────────

function limits({ project, word }: Asked): Proposal[] {
  return namesOf(project, 'label', [...labels(project), 'written'], word.length);
}

/** Labels that the place does not have yet, and the names of other places, for one that goes on here. */
function options({ project, before, word }: Asked): Proposal[] {
  const place = before.slice(before.lastIndexOf('<'));
  const taken = new Set([...place.matchAll(/([\w.]+)\??(?=[,:])/g)].map(([, name]) => name));
  const free = [...labels(project), 'sic', 'corr'].filter((name) => !taken.has(name));
  const isFirst = /^<\w*$/.test(place);
  return [
    ...namesOf(project, 'label', free, word.length).map((one) => ({ ...one, insert: `${one.label}: ` })),
    ...(isFirst ? knownNames(project, 'place', word.length).map((one) => ({ ...one, insert: `${one.label} ` })) : []),
  ];
}

// ─── spans, changes, values ──────────────────────────────────────────────────────────────────────────────────────

const tuplets = (replaces: number): Proposal[] =>
  ['3in2', '5in4', '6in4', '2in3'].map((label) => ({
    label,
    kind: KINDS.Value,
    replaces,
    documentation: `${label.split('in').join(' equal values in the time of ')}.`,
  }));

function inChange({ project, here, before, word }: Asked): Proposal[] {
  const text = before.slice(before.lastIndexOf('('), before.length - word.length);
  const asking = { project, replaces: word.length, lines: linesUnder(project, here.holder), text };
  return proposalsOf(asking, expectedInChange(text));
}

const between = (): Proposal[] => [
  ...valueNames.map(([part, name]) => ({ label: `${part}`, kind: KINDS.Value, replaces: 0, detail: name })),
  ...described(laneMeanings, 0),
];
