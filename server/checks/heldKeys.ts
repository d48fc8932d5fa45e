/** One voice strikes a key that another still holds (common practice): one string cannot do both. */
import { manualsIn, momentsOf } from './moments';
import { noteName } from './pitches';
import type { Sounding } from './sounding';
import { type Look, problemIn, type SystemProblem } from './systems';

/** Of two notes that sound alike: where keys are divided, two names may be two keys. */
const isOneKey = (a: Sounding, b: Sounding, divided: readonly number[]): boolean =>
  a.step === b.step || !divided.includes(a.midi % 12);

/** What is held when a note is struck on its key by another voice. */
const heldUnder = (struck: Sounding, sounding: readonly Sounding[], divided: readonly number[]): Sounding | undefined =>
  sounding.find(
    (other) =>
      other.midi === struck.midi &&
      other.onset < struck.onset &&
      other.voice !== struck.voice &&
      isOneKey(other, struck, divided),
  );

function told(struck: Sounding, held: Sounding, voices: readonly string[]): SystemProblem {
  const note = noteName(struck.member);
  const other = voices[held.voice] ?? '';
  return problemIn({
    code: 'key-still-held',
    at: struck.member.source,
    bar: struck.bar.bar,
    slots: { voice: voices[struck.voice] ?? '', note, other },
    related: {
      message: `${noteName(held.member)} is held in ${other}`,
      source: held.member.source,
      system: held.bar.system,
    },
  });
}

export const heldKeys: Look = (view) => {
  const { keyboard, voices } = view.facts;
  if (!keyboard.isNamed || view.score.kind === 'free') return [];
  return view.passages.flatMap((passage) => {
    const found: SystemProblem[] = [];
    const manualOf = manualsIn(view, passage.unit);
    for (const { at, sounding } of momentsOf(passage)) {
      for (const struck of sounding) {
        if (struck.onset !== at || !struck.bar.own) continue;
        const held = heldUnder(struck, sounding, keyboard.divided);
        if (held !== undefined && manualOf(held.voice, at) === manualOf(struck.voice, at))
          found.push(told(struck, held, voices));
      }
    }
    return found;
  });
};
