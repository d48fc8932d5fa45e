/** What the arguments of clauses and changes mean: signatures, metres, tempi, sections. */
import { afterWord, allOf, firstOf } from '../../grammar/statements/read';
import { time } from '../../grammar/time';
import type { Clause } from '../../grammar/tree';
import { meterOf } from '../../grammar/vocabulary/meters';
import type { KeySign, Meter, Tempo } from './score';

type Args = Clause['args'];

/** `key bb eb`; of `key none` the signature is empty. */
export const keyOfArgs = (args: Args): KeySign[] =>
  allOf(args, 'pitch').flatMap(({ spelling: { letter, accidental, octave } }): KeySign[] =>
    accidental === undefined ? [] : [{ letter, accidental, octave }],
  );

/** `meter cut-C = 2/2`; undefined where it does not say what a bar takes. */
export function meterOfArgs(args: Args): Meter | undefined {
  const sign = firstOf(args, 'word')?.text;
  if (sign === undefined) return undefined;
  const ratio = firstOf(args, 'ratio');
  const usual = meterOf(sign);
  const beats = ratio?.n ?? usual?.beats;
  const beatValue = ratio?.d ?? usual?.beatValue;
  if (beats === undefined || beatValue === undefined || beats < 1 || beatValue < 1) return undefined;
  return { sign, length: time(beats, beatValue), beats, beatValue };
}

/** `tempo 4 at 63`. */
export function tempoOfArgs(args: Args): Tempo | undefined {
  const value = firstOf(args, 'value')?.form;
  const rate = firstOf(args, 'number') ?? afterWord(args, 'at');
  return value === undefined || rate?.kind !== 'number' ? undefined : { value, perMinute: rate.value };
}

/** `section petite in B`: its name and the section of which it is a part. */
export function sectionOf(args: Args): { name: string; within: string | undefined } | undefined {
  const name = firstOf(args, 'name')?.text;
  const within = afterWord(args, 'in');
  return name === undefined ? undefined : { name, within: within?.kind === 'name' ? within.text : undefined };
}
