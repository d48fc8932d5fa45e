/** What stands under the pointer, in words. */
import { type Hover, MarkupKind, type Position } from 'vscode-languageserver-types';
import type { EventItem, MarkForm, OptionsItem, SpanHead } from '../../grammar/tree';
import { laneMeanings, markMeanings, spanMeanings } from '../../grammar/vocabulary/lanes';
import { changes, lookUp, statements } from '../../grammar/vocabulary/statements';
import { counted, portion } from '../score/amounts';
import { labelText } from '../score/choice';
import type { Project } from '../workspace/project';
import { type EventHere, eventHere, systemOf } from './events';
import { argumentInWords, clauseInWords, described } from './hoverStatement';
import { keyInWords } from './keyHover';
import { asTyped, literally, markdown } from './markdown';
import { nameAt } from './names';
import { nameInWords, namesAt } from './nameWords';
import { type Here, hereAt, isInside, type Node, pathTo, stretchOf } from './nodes';
import { soundInWords, whereInWords } from './noteWords';
import { offsetOfPosition, positionOfOffset, rangeOfOffsets } from './place';
import { signAt, signInWords } from './signHover';
import { tuningInWords } from './tuningHover';
import { valueInWords } from './words';

/**
 * A picture of the bar at a place as Markdown; undefined where it cannot be drawn. Of a sign: its voice alone, with what is
 * played above what is written.
 */
export type Picture = (at: EventHere, ofSign: boolean) => string | undefined;

const noPicture: Picture = () => undefined;

/** What can be said of a place: paragraphs of Markdown. */
type Told = readonly string[];

const nothing: Told = [];

/** @param otherTables the client's command that shows a sign under other tables */
export function hover(
  project: Project,
  position: Position,
  picture: Picture = noPicture,
  otherTables?: string,
): Hover | null {
  const offset = offsetOfPosition(project.tree, position);
  const here = hereAt(project.tree, offset);
  if (here === undefined || !isInside(here, offset)) return nameHover(project, offset);
  const path = pathTo(here);
  for (const node of [...path].reverse()) {
    const told = toldOf(project, here, node, path);
    if (told.length === 0) continue;
    const more = isSign(node) ? linkToTables(project, offset, otherTables) : nothing;
    return hoverOf(project, stretchOf(here, node), [...told, ...more, ...drawn(project, here, path, picture)]);
  }
  return null;
}

/** The voice or witness of a lane stands before its text. */
function nameHover(project: Project, offset: number): Hover | null {
  const name = nameAt(project, offset);
  const words = name === undefined ? nothing : nameInWords(project, name);
  return name === undefined || words.length === 0 ? null : hoverOf(project, name, words);
}

const hoverOf = ({ tree }: Project, { start, end }: { start: number; end: number }, told: Told): Hover => ({
  contents: { kind: MarkupKind.Markdown, value: told.join('\n\n') },
  range: rangeOfOffsets(tree, start, end),
});

/** The picture of the bar around a place; a value stands for the event that follows it. */
function drawn(project: Project, here: Here, path: readonly Node[], picture: Picture): Told {
  const bar = path.find((node) => node.what === 'bar');
  if (bar === undefined) return nothing;
  const sign = path.some(isSign) ? signAt(project, stretchOf(here, { pos: here.pos, len: 0 }).start) : undefined;
  const played = sign?.ways.find(({ notes }) => notes.length > 0);
  const bearer = played && eventHere(project, here, played.readings);
  const above = bearer && picture(bearer, true);
  if (above !== undefined) return [above];
  const next = bar.bar.items.find(({ kind, pos }) => kind === 'event' && pos >= here.pos)?.pos ?? here.pos;
  const event = eventHere(project, here) ?? eventHere(project, { ...here, pos: next });
  const made = event === undefined ? undefined : picture(event, false);
  return made === undefined ? nothing : [made];
}

function toldOf(project: Project, here: Here, node: Node, path: readonly Node[]): Told {
  switch (node.what) {
    case 'mark':
      return markInWords(project, here, node.mark.form);
    case 'annotation':
      return node.annotation.text === undefined ? namesAt(project, here) : [markdown`“${node.annotation.text}”`];
    case 'member':
      return eventInWords(project, here, node.event);
    case 'item':
      return itemInWords(project, here, node);
    case 'label':
    case 'place':
      return namesAt(project, here);
    case 'argument':
      return argumentInWords(project, here, node, path);
    case 'clause':
      return clauseInWords(here, node, path);
    case 'statement':
      return here.pos <= node.statement.keyword.length
        ? described(lookUp(statements, node.statement.keyword))
        : nothing;
    default:
      return nothing;
  }
}

// ─── music ───────────────────────────────────────────────────────────────────────────────────────────────────────

function itemInWords(project: Project, here: Here, node: Node & { what: 'item' }): Told {
  const { item } = node;
  switch (item.kind) {
    case 'event':
      return eventInWords(project, here, item);
    case 'value':
      return [valueInWords(item.form)];
    case 'span':
      return here.pos <= item.pos + item.head.text.length ? spanInWords(item.head) : nothing;
    case 'options':
      return optionsInWords(project, item, here);
    case 'change':
      return described(lookUp(changes, item.change.word));
    case 'beam':
      return [laneMeanings[item.join ? '&' : ','] ?? ''];
    case 'lost':
      return [laneMeanings.lost ?? ''];
    case 'omit':
      return [laneMeanings.omit ?? ''];
    case 'barline':
      return barInWords(project, here);
    default:
      return nothing;
  }
}

function barInWords(project: Project, here: Here): Told {
  if (here.holder.kind !== 'lane') return nothing;
  const { segments } = here.holder.placed.tree;
  const segment = segments.findIndex(({ pos, len }) => here.pos <= pos + len);
  const found = systemOf(project, here.blockIndex, project.analysis.choices[0]);
  const bar = found?.piece.bars[found.system.firstBar + segment];
  if (bar === undefined || segment < 0) return nothing;
  const { number, duration, expected } = bar;
  const long = expected === undefined ? counted(duration, duration).have : portion(duration, expected);
  return [`End of bar ${number}: ${long}`];
}

const silences: Readonly<Partial<Record<EventItem['what'], string>>> = {
  rest: 'r',
  barRest: 'rbar',
  gap: '_',
  barGap: '__',
};

function eventInWords(project: Project, here: Here, item: EventItem): Told {
  const found = eventHere(project, here);
  const silence = silences[item.what];
  const meaning = silence === undefined ? nothing : [laneMeanings[silence] ?? ''];
  if (found === undefined) return meaning;
  const { member } = found;
  if (member === undefined) return [...meaning, whereInWords(found)];
  return [
    soundInWords(found, member),
    whereInWords(found),
    ...keyInWords(found, member),
    ...tuningInWords(found, member),
  ];
}

function markInWords(project: Project, here: Here, form: MarkForm): Told {
  if (form.type === 'finger') return [`Finger ${form.fingers?.join(', then ')}.`];
  if (form.type === 'accidental') return ['An accidental drawn above the note, or at the sign before it.'];
  if (form.type === 'weight') return ["An editor's weight: how long the note seems in free music."];
  const meaning = markMeanings[form.name];
  if (form.type !== 'sign') return meaning === undefined ? nothing : [meaning];
  return signInWords(project, form, signAt(project, stretchOf(here, { pos: here.pos, len: 0 }).start));
}

/** A link of Markdown to the same sign under other tables. */
function linkToTables(project: Project, offset: number, command: string | undefined): Told {
  const sign = command === undefined ? undefined : signAt(project, offset);
  if (sign === undefined) return nothing;
  const { line, character } = positionOfOffset(project.tree, sign.start);
  const place = encodeURIComponent(JSON.stringify([project.file, line, character]));
  return [`[The same sign under other tables](command:${command}?${place})`];
}

const isSign = (node: Node): boolean => node.what === 'mark' && node.mark.form.type === 'sign';

function spanInWords({ word, proportion }: SpanHead): Told {
  if (word !== undefined) return [spanMeanings[word]];
  return proportion === undefined ? nothing : [`${proportion.n} equal values in the time of ${proportion.m}.`];
}

function optionsInWords({ analysis, tree }: Project, item: OptionsItem, here: Here): Told {
  const place = item.place === undefined ? 'Sources differ here' : markdown`Place ${item.place.text}`;
  const shown = item.options.map((option) => {
    const { start, end } = stretchOf(here, option);
    return `- ${asTyped(tree.text.slice(start, end))}${takers(option.labels.map(labelText), analysis.environment)}`;
  });
  return [`${place}; the first is the main text:\n${shown.join('\n')}`];
}

/** Who prefers one of these labels. */
function takers(labels: readonly string[], { readings }: Project['environment']): string {
  const taking = readings.filter(({ takes: [first] }) => first !== undefined && labels.includes(first));
  return taking.length === 0 ? '' : `, preferred by ${taking.map(({ name }) => literally(name)).join(', ')}`;
}
