/** Symbols as critical reports abbreviate them: values by their first letters, pitches after Helmholtz (the facts of editing, from memory). */
import { format } from '../../../grammar/time';
import type { ValueForm } from '../../../grammar/tree';
import { ALTERATIONS } from '../../../grammar/vocabulary/pitches';
import { helmholtz } from '../../score/pitchNames';
import type { NoteMember, VoiceEvent } from '../../score/score';

/** By length in semibreves. */
const VALUES: Readonly<Record<string, string>> = {
  '8': 'maxima',
  '4': 'long',
  '2': 'br',
  '1': 'sb',
  '1/2': 'm',
  '1/4': 'c',
  '1/8': 'q',
  '1/16': 'sq',
  '1/32': 'dsq',
  '1/64': 'hdsq',
  '1/128': '128th',
};

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
  value === undefined ? '' : `${VALUES[format(value.base)] ?? value.text}${'.'.repeat(value.dots)}`;

const byHeight = (a: NoteMember, b: NoteMember): number => a.midi - b.midi;

/** Accidentals as drawn. */
const pitchInTrade = ({ spelling: { letter, accidental }, octave }: NoteMember): string =>
  `${helmholtz({ letter, alteration: ALTERATIONS[accidental ?? 'n'], octave })}${accidental === 'n' ? ' natural' : ''}`;
