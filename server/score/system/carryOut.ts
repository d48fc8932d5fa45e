/** What a system hands on to the next one. */
import { add, isZero, ZERO } from '../../../grammar/time';
import type { Laid } from '../bars';
import { type Carry, type OpenBar, type Sung, silentVoice, type VoiceCarry } from '../carry';
import type { soundingPitch } from '../pitch';
import { isSpecial } from '../score';
import type { SystemChanges } from './changes';
import type { SystemProblems } from './problems';
import type { SystemTask } from './task';

/** What the parts of a system come to at its end. */
interface AtEnd {
  readonly laid: Laid;
  readonly changes: SystemChanges;
  readonly pitch: ReturnType<typeof soundingPitch>;
  /** By voice. */
  readonly openCurves: ReadonlyMap<number, VoiceCarry['curves']>;
  /** By voice. */
  readonly sungOn: ReadonlyMap<number, Sung>;
}

export function carryOut({ carry, environment }: SystemTask, atEnd: AtEnd, problems: SystemProblems): Carry {
  const { laid, changes, pitch } = atEnd;
  const { clefs, keys, meter, tempo } = changes;
  const open = openBar(carry, laid, pitch.accidentals);
  const voices: VoiceCarry[] = [];
  for (let voice = 0; voice < environment.voices.length; voice++) {
    voices.push(voiceOut(voice, carry.voices[voice] ?? silentVoice, atEnd, problems));
  }
  return { clefs, keys, meter, tempo, stated: undefined, open, voices };
}

function openBar(carry: Carry, { bars }: Laid, accidentals: OpenBar['accidentals']): OpenBar | undefined {
  const last = bars.at(-1);
  if (last === undefined) return carry.open;
  return last.closing === undefined ? { elapsed: add(last.elapsed, last.duration), accidentals } : undefined;
}

function voiceOut(voice: number, before: VoiceCarry, atEnd: AtEnd, problems: SystemProblems): VoiceCarry {
  const { laid, changes, pitch, openCurves, sungOn } = atEnd;
  const curves = openCurves.get(voice) ?? [];
  const own = laidVoice(laid, voice);
  if (own === undefined) return { ...absent(before, problems), curves };
  const state = pitch.voices.get(voice);
  return {
    ties: state?.ties ?? [],
    last: isSpecial(laid.bars.at(-1)?.closing) ? [] : (state?.last ?? []),
    curves,
    runningOn: own.runningOn,
    manual: changes.manuals[voice],
    atEnding: state?.atEnding,
    sung: sungOn.get(voice) ?? silentVoice.sung,
  };
}

/** Undefined for a voice that has no lane in the system. */
function laidVoice({ voices }: Laid, voice: number): Laid['voices'][number] | undefined {
  for (const one of voices) if (one.voice === voice) return one;
  return undefined;
}

/** A voice without a lane has nothing drawn: a tie into such a system leads nowhere. */
function absent(before: VoiceCarry, problems: SystemProblems): VoiceCarry {
  for (const { letter, octave } of before.ties) problems.atHead('tie-to-nothing', { note: `${letter}${octave}` });
  if (!isZero(before.runningOn)) problems.atHead('through-to-nothing', {});
  return { ...before, ties: [], last: [], runningOn: ZERO, sung: silentVoice.sung };
}
