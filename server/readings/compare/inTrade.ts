/** Symbols as critical reports abbreviate them: values by their first letters, pitches after Helmholtz (the facts of editing, from memory). */
import { equal, type Time, time } from '../../../grammar/time';
import type { ValueForm } from '../../../grammar/tree';
import { ALTERATIONS } from '../../../grammar/vocabulary/pitches';
import { helmholtz } from '../../score/pitchNames';
import type { NoteMember, VoiceEvent } from '../../score/score';

/** From the longest: their length, and how they are abbreviated. */
export const VALUES: readonly { readonly length: Time; readonly short: string }[] = [
  { length: time(8), short: 'maxima' },
  { length: time(4), short: 'long' },
  { length: time(2), short: 'br' },
  { length: time(1), short: 'sb' },
  { length: time(1, 2), short: 'm' },
  { length: time(1, 4), short: 'c' },
  { length: time(1, 8), short: 'q' },
  { length: time(1, 16), short: 'sq' },
  { length: time(1, 32), short: 'dsq' },
  { length: time(1, 64), short: 'hdsq' },
  { length: time(1, 128), short: 'shdsq' },
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

const shortOf = ({ base, text }: ValueForm): string => VALUES.find(({ length }) => equal(length, base))?.short ?? text;

const byHeight = (a: NoteMember, b: NoteMember): number => a.midi - b.midi;

/** Accidentals as drawn. */
const pitchInTrade = ({ spelling: { letter, accidental }, octave }: NoteMember): string =>
  `${helmholtz({ letter, alteration: ALTERATIONS[accidental ?? 'n'], octave })}${accidental === 'n' ? ' natural' : ''}`;
