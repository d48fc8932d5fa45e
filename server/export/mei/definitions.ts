/** `scoreDef`, `staffDef` and what changes in them: lines, clefs, signatures, meters. */
import { isZero, type Time } from '../../../grammar/time';
import type { Clef } from '../../../grammar/tree';
import { clefsText } from '../../../grammar/vocabulary/clefs';
import type { Environment } from '../../score/environment';
import { keyText } from '../../score/pitchNames';
import type { KeySign, Meter, Score, StateChange } from '../../score/score';
import type { Losses } from '../losses';
import type { Measure } from '../measures';
import { fifthsOf, type Staves } from '../staves';
import { type XmlAttributes, type XmlElement, xml } from '../xml';
import { ACCIDENTALS, METER_GLYPHS } from './tables';

/** What stands between two notes of a stave. */
export interface Between {
  /** From the start of its bar. */
  readonly offset: Time;
  /** Undefined: all staves. */
  readonly stave: number | undefined;
  /** The voice whose layer it is in; undefined: any. */
  readonly voice?: number;
  readonly element: XmlElement;
}

/** All that is in force at a measure that opens a piece or an export. */
export function openingDefinition(score: Score, measure: Measure, staves: Staves, losses?: Losses): XmlElement {
  const { environment } = score;
  const state = staves.stateAt(measure.bar.index);
  const definitions = environment.staves.map(({ name, lines, part }, stave) => {
    const { clefs, isGiven } = staves.shown(state.clefs[stave] ?? [], stave);
    if (isGiven) {
      const where = { source: undefined, system: measure.system, bar: measure.bar };
      losses?.add('mei-no-clef', { stave: name, clef: clefsText(clefs) }, where);
    }
    const definition = xml('staffDef', { n: stave + 1, lines: staves.clefs === 'modern' ? 5 : lines }, [
      xml('label', {}, name),
      clefElement(clefs),
      keyElement(state.keys[stave] ?? []),
      ...layerDefinitions(environment, stave),
    ]);
    return { part, definition };
  });
  const { meter } = measure.bar;
  return xml('scoreDef', tuningOf(environment), [
    meter === undefined ? undefined : meterElement(meter),
    groupElement(definitions, groupOf(environment)),
  ]);
}

interface StaveDefinition {
  readonly part: string | undefined;
  readonly definition: XmlElement;
}

/** The staves in one group, or, where there are parts, in a group each with its name. */
function groupElement(staves: readonly StaveDefinition[], joined: XmlAttributes): XmlElement {
  const parts = new Set(staves.map(({ part }) => part));
  if (parts.size < 2) {
    return xml(
      'staffGrp',
      joined,
      staves.map(({ definition }) => definition),
    );
  }
  const groups = [...parts].map((name) => {
    const own = staves.filter(({ part }) => part === name);
    return xml('staffGrp', own.length === 1 ? {} : joined, [
      name === undefined ? undefined : xml('label', {}, name),
      ...own.map(({ definition }) => definition),
    ]);
  });
  return xml('staffGrp', { 'bar.thru': 'false' }, groups);
}

/** Temperaments that MEI has a word for (`data.TEMPERAMENT`); all are told in the head. */
const TEMPERAMENTS: Readonly<Record<string, string>> = { equal: 'equal', meantone: 'mean', pythagorean: 'pythagorean' };

function tuningOf({ pitch, statements }: Environment): XmlAttributes {
  const [name] = statements.find(({ statement }) => statement.keyword === 'tuning')?.statement.args ?? [];
  return {
    ...(pitch === undefined ? {} : { 'tune.pname': 'a', 'tune.Hz': pitch }),
    'tune.temper': name !== undefined && 'text' in name ? TEMPERAMENTS[name.text] : undefined,
  };
}

/** The voices of a stave, each a layer, numbered in the order of their declaration. */
const layerDefinitions = ({ voices }: Environment, stave: number): readonly XmlElement[] =>
  voices.filter((voice) => voice.stave === stave).map(({ name }, i) => xml('layerDef', { n: i + 1, label: name }));

/** The number of a voice's layer on its own stave, from 1. */
export const layerOf = ({ voices }: Environment, voice: number): number =>
  voices.slice(0, voice + 1).filter(({ stave }) => stave === voices[voice]?.stave).length;

/** Open score, one voice a stave, has a bracket and barlines that do not cross; keyboard score a brace. */
function groupOf({ staves, voices }: Environment): Readonly<Record<string, string | undefined>> {
  const isOpen =
    staves.length > 2 &&
    staves.every(({ name }, stave) => voices.some((one) => one.stave === stave && one.name === name));
  if (staves.length === 1) return {};
  return isOpen ? { symbol: 'bracket', 'bar.thru': 'false' } : { symbol: 'brace', 'bar.thru': 'true' };
}

/** What takes effect at the very beginning of a measure; undefined where nothing does. */
export function changedDefinition(score: Score, measure: Measure, staves: Staves): XmlElement | undefined {
  const here = momentsIn(measure, staves).filter(({ offset }) => isZero(offset));
  const own = score.environment.staves.map((_, stave) =>
    here.filter(({ change }) => change.stave === stave).flatMap(({ change }) => changeElements(change)),
  );
  const common = here
    .filter(({ change }) => change.stave === undefined)
    .flatMap(({ change }) => changeElements(change))
    .sort((a, b) => ORDER.indexOf(a.name) - ORDER.indexOf(b.name));
  const definitions = own.flatMap((elements, stave) =>
    elements.length === 0 ? [] : [xml('staffDef', { n: stave + 1 }, elements)],
  );
  if (common.length === 0 && definitions.length === 0) return undefined;
  return xml('scoreDef', {}, [...common, definitions.length === 0 ? undefined : xml('staffGrp', {}, definitions)]);
}

/** The order that `scoreDef` wants. */
const ORDER = ['keySig', 'meterSig'];

/** What takes effect within a measure, on each stave that it concerns. */
export const changesWithin = (measure: Measure, staves: Staves, { environment }: Score): readonly Between[] =>
  momentsIn(measure, staves)
    .filter(({ offset }) => !isZero(offset))
    .flatMap(({ change, offset }) =>
      (change.stave === undefined ? [...environment.staves.keys()] : [change.stave]).flatMap((stave) =>
        changeElements(change).map((element) => ({ offset, stave, element })),
      ),
    );

const momentsIn = ({ bar }: Measure, staves: Staves) =>
  staves.moments
    .filter((moment) => moment.bar === bar.index && !moment.change.restated)
    .filter(({ change }) => change.clefs === undefined || staves.clefs === 'source');

const changeElements = ({ clefs, key, meter }: StateChange): readonly XmlElement[] => [
  ...(clefs === undefined ? [] : [clefElement(clefs)]),
  ...(key === undefined ? [] : [keyElement(key)]),
  ...(meter === undefined ? [] : [meterElement(meter)]),
];

export function clefElement(clefs: readonly Clef[]): XmlElement {
  const [first, ...others] = clefs.map(({ letter, line }) => xml('clef', { shape: letter, line }));
  return first !== undefined && others.length === 0
    ? first
    : xml('clefGrp', {}, clefs.length === 0 ? [] : [first, ...others]);
}

/** The usual signs by their number; others, and those whose octave the source says, one by one. */
export function keyElement(key: readonly KeySign[]): XmlElement {
  const fifths = fifthsOf(key);
  const number = fifths === undefined ? 'mixed' : fifths === 0 ? '0' : `${Math.abs(fifths)}${fifths < 0 ? 'f' : 's'}`;
  const isPlain = fifths !== undefined && key.every(({ octave }) => octave === undefined);
  // MEI wants the octave of all signs or of none; the label has them as typed.
  const hasOctaves = key.every(({ octave }) => octave !== undefined);
  return xml(
    'keySig',
    { sig: number, label: isPlain ? undefined : keyText(key) },
    isPlain ? [] : key.map((sign) => keyAccidental(sign, hasOctaves)),
  );
}

const keyAccidental = ({ letter, accidental, octave }: KeySign, hasOctave: boolean): XmlElement =>
  xml('keyAccid', { pname: letter, accid: ACCIDENTALS[accidental], oct: hasOctave ? octave : undefined });

/** The sign as it is drawn, with the beats that it counts. */
export function meterElement({ sign, beats, beatValue }: Meter): XmlElement {
  return xml('meterSig', { count: beats, unit: beatValue, ...lookOf(sign, beats, beatValue) });
}

function lookOf(sign: string, beats: number, beatValue: number): Readonly<Record<string, string | undefined>> {
  if (sign === `${beats}/${beatValue}`) return {};
  if (sign === 'C') return { sym: 'common' };
  if (sign === 'cut-C') return { sym: 'cut' };
  if (sign === `${beats}`) return { form: 'num' };
  const glyph = METER_GLYPHS[sign];
  return { label: sign, ...(glyph && { 'glyph.auth': 'smufl', 'glyph.name': glyph.name, 'glyph.num': glyph.number }) };
}
