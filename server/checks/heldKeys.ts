/** One voice strikes a key that another still holds (common practice): one string cannot do both. */
import { eachMoment, manualsIn } from './moments';
import { noteName } from './pitches';
import type { Sounding } from './sounding';
import { type Look, problemIn, type SystemProblem } from './systems';

/** Where keys are divided, two names of one key may be two keys. */
const isOneKey = (a: Sounding, b: Sounding, divided: readonly number[]): boolean =>
  a.midi === b.midi && (a.step === b.step || !divided.includes(a.midi % 12));

export const heldKeys: Look = (view) => {
  const { keyboard, voices } = view.facts;
  if (!keyboard.isNamed || view.score.kind === 'free') return [];
  return view.passages.flatMap((passage) => {
    const found: SystemProblem[] = [];
    const manualOf = manualsIn(view, passage.unit);
    eachMoment(passage, (moment, sounding) => {
      for (const struck of sounding) {
        if (struck.onset !== moment || !struck.bar.own) continue;
        const held = sounding.find(
          (other) => other.onset < moment && other.voice !== struck.voice && isOneKey(other, struck, keyboard.divided),
        );
        if (held === undefined || manualOf(held.voice, moment) !== manualOf(struck.voice, moment)) continue;
        found.push(
          problemIn({
            code: 'key-still-held',
            at: struck.member.source,
            bar: struck.bar.bar,
            slots: {
              voice: voices[struck.voice] ?? '',
              note: noteName(struck.member),
              other: voices[held.voice] ?? '',
            },
            related: {
              message: `${noteName(held.member)} is held in ${voices[held.voice] ?? ''}`,
              source: held.member.source,
              system: held.bar.system,
            },
          }),
        );
      }
    });
    return found;
  });
};
