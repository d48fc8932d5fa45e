/** The keyboard that the file declares, as far as checks ask. */
import { modulo } from '../../grammar/modulo';
import { semitonesOf } from '../../grammar/vocabulary/pitches';
import { dividedKeys, type Instrument, instrumentOf, manualsOf, namesInstrument } from '../instrument/instrument';
import type { Environment } from '../score/environment';

export interface Keyboard {
  /** Whether the file names an instrument: else nothing is known of hands and keys. */
  readonly isNamed: boolean;
  /** Its keys; undefined where no compass is stated: then every key is there. */
  readonly instrument: Instrument | undefined;
  readonly manuals: number;
  /** One of the manuals is played by the feet. */
  readonly hasPedal: boolean;
  /** Pitch classes whose keys are divided. */
  readonly divided: readonly number[];
}

export function keyboardOf(environment: Environment): Keyboard {
  const manuals = manualsOf(environment);
  return {
    isNamed: namesInstrument(environment),
    instrument: instrumentOf(environment),
    manuals: manuals.length,
    hasPedal: manuals.some(({ name }) => name === 'pedal'),
    divided: dividedKeys(environment).map(([first]) => modulo(semitonesOf(first), 12)),
  };
}
