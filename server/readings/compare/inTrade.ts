/** Symbols as critical reports abbreviate them: values by their first letters, pitches after Helmholtz (the facts of editing, from memory). */
import { format } from '../../../grammar/time';
import type { ValueForm } from '../../../grammar/tree';
import { ALTERATIONS } from '../../../grammar/vocabulary/pitches';
import { helmholtz } from '../../score/pitchNames';
import type { NoteMember, VoiceEvent } from '../../score/score';

/** From the longest: their length in semibreves, how they are abbreviated, and what they are called. */
export const VALUES: readonly { readonly length: string; readonly short: string; readonly name: string }[] = [
  { length: '8', short: 'maxima', name: 'maxima' },
  { length: '4', short: 'long', name: 'longa' },
  { length: '2', short: 'br', name: 'breve' },
  { length: '1', short: 'sb', name: 'semibreve' },
  { length: '1/2', short: 'm', name: 'minim' },
  { length: '1/4', short: 'c', name: 'crotchet' },
  { length: '1/8', short: 'q', name: 'quaver' },
  { length: '1/16', short: 'sq', name: 'semiquaver' },
  { length: '1/32', short: 'dsq', name: 'demisemiquaver' },
  { length: '1/64', short: 'hdsq', name: 'hemidemisemiquaver' },
  { length: '1/128', short: 'shdsq', name: 'semihemidemisemiquaver' },
];

/** `c. d″`, `q rest`, `c g′–b′`; a note drawn without an accidental has none here, whatever sounds. */
export function symbolInTrade(event: VoiceEvent): string {
  const value = event.wholeBar ? 'bar' : valueInTrade(event.value);
  const small = event.small === undefined ? '' : 'small ';
  const tuplets = event.tuplets.map(({ n, m }) => ` ${n}:${m}`).join('');
  return `${small}${value}${tuplets} ${whatInTrade(event)}`.trim();
}

const whatInTrade = ({ kind, members }: VoiceEvent): string => {
  if (kind === 'note') return [...members].sort(byHeight).map(pitchInTrade).join('–');
  return { rest: 'rest', gap: 'nothing drawn', lost: 'lost' }[kind];
};

const valueInTrade = (value: ValueForm | undefined): string =>
  value === undefined ? '' : `${shortOf(value)}${'.'.repeat(value.dots)}`;

const shortOf = ({ base, text }: ValueForm): string =>
  VALUES.find(({ length }) => length === format(base))?.short ?? text;

const byHeight = (a: NoteMember, b: NoteMember): number => a.midi - b.midi;

/** Accidentals as drawn. */
const pitchInTrade = ({ spelling: { letter, accidental }, octave }: NoteMember): string =>
  `${helmholtz({ letter, alteration: ALTERATIONS[accidental ?? 'n'], octave })}${accidental === 'n' ? ' natural' : ''}`;
