/** The rules by which the text is read, and what is regularised without a word at its place. */
import { practiceInWords } from '../../practice/inWords';
import { valuesInWords } from '../../score/amounts';
import type { Environment } from '../../score/environment';
import { practicesOfFile } from '../choices';
import { accidentalReach, tableInWords, tuningInWords } from '../inWords';
import type { ReportSection } from './document';

/** How places are counted; stated once, for all tables. */
export const COUNTING =
  'Places are given as bar, voice, symbol. In each bar and voice notes, chords and rests are counted from 1, small notes among them, tied notes one by one; what is not drawn is not counted. An upbeat is bar 0; first and second endings, and halves of a bar around a repeat, share a number (8a, 8b). The count is that of the main text; of what stands in another text only, that text’s own.';

/** @param key what explains the symbols of the report */
export function rulesSection(environment: Environment, key: readonly string[]): ReportSection {
  const { accidentals, signs } = environment;
  const practices = practicesOfFile(environment);
  const all = practices.map(practiceInWords).join('; ');
  return {
    heading: 'How this report is to be read; rules in force',
    said: [
      COUNTING,
      ...key,
      `A written accidental holds ${accidentalReach[accidentals]}. What sounds follows from this and the signatures; no accidental is added in silence.`,
      signs === undefined
        ? 'No table of signs is stated for all readings.'
        : `Where a reading names no table, signs are played after ${tableInWords(environment, signs)}.`,
      practices.length === 0
        ? 'No practice of rhythm is stated for all readings.'
        : `Practices of rhythm stated for every reading but the written text: ${all}.`,
      ...tuningOf(environment),
      `Regularised in silence: ${regularised(environment).join('; ')}. Clefs, signatures, values, barlines, ties and the order of voices are those of the sources.`,
      ...assumed(environment),
    ],
    tables: [],
  };
}

function tuningOf(environment: Environment): string[] {
  const { statements, pitch } = environment;
  const tuning = statements.find(({ statement }) => statement.keyword === 'tuning')?.statement;
  const parts = [
    ...(pitch === undefined ? [] : [`a′ = ${pitch} Hz`]),
    ...(tuning === undefined ? [] : [tuningInWords(environment, 'written', tuning.args)]),
  ];
  return parts.length === 0 ? [] : [`Pitch and tuning: ${parts.join(', ')}.`];
}

const regularised = ({ beaming }: Environment): string[] => [
  beaming.length === 0
    ? 'notes are beamed by the metre, save where a voice says otherwise'
    : `notes are beamed in groups (${beaming.map(({ value, by }) => `${valuesInWords(value)} by ${by}`).join(', ')}), save where a voice says otherwise`,
  'stems point as the voice has them',
  'bars are numbered',
];

const DEFAULTS: Readonly<Record<string, string>> = {
  accidentals: 'the reach of accidentals (their note)',
  pitch: 'the pitch (a′ = 415 Hz)',
  tuning: 'the tuning (equal)',
  tempo: 'the tempo (60 crotchets a minute)',
};

/** What nothing states and is therefore assumed. */
function assumed({ stated }: Environment): string[] {
  const missing = Object.entries(DEFAULTS).filter(([keyword]) => !stated.has(keyword));
  return missing.length === 0
    ? []
    : [`Not stated, and therefore assumed: ${missing.map(([, says]) => says).join('; ')}.`];
}
