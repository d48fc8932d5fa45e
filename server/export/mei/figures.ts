/** Figures of a thorough bass. */
import { add, multiply, type Time, time, toNumber } from '../../../grammar/time';
import type { AccidentalSign, Figure } from '../../../grammar/tree';
import { type Chunk, figureTime } from '../chunks';
import { decimal } from '../values';
import { type XmlElement, xml } from '../xml';
import type { Names } from './names';

/** The figures of one voice, each with the chunk over which it stands. */
export function figureElements(
  chunks: readonly Chunk[],
  names: Names,
  resp: string | undefined,
): readonly { readonly chunk: Chunk; readonly element: XmlElement }[] {
  const figured = chunks.filter(({ event, first }) => first && (event.figures?.what ?? 'none') !== 'none');
  return figured.flatMap((chunk, i) => {
    const columns = chunk.event.figures?.columns ?? [];
    const following = figured.slice(i + 1);
    const other = following.findIndex(({ event }) => event.figures?.what !== 'hold');
    const held = (other < 0 ? following : following.slice(0, other)).at(-1);
    return columns.map((column, k) => {
      const isHeld = held !== undefined && k === columns.length - 1;
      const element = xml(
        'harm',
        {
          'xml:id': names.part(names.of(chunk), 'f', k + 1),
          ...(k === 0
            ? { startid: `#${names.of(chunk)}` }
            : { tstamp: beatAt(chunk, k), staff: chunk.event.stave + 1 }),
          endid: isHeld ? `#${names.of(held)}` : undefined,
        },
        [
          xml(
            'fb',
            {},
            column.map((figure) => figureElement(figure, isHeld, resp)),
          ),
        ],
      );
      return { chunk, element };
    });
  });
}

/** Beats count from 1 in units of the meter (MEI 5.1, `tstamp`); without a meter crotchets. */
export const beatOf = (offset: Time, unit: number | undefined): string =>
  decimal(1 + toNumber(multiply(offset, time(unit ?? 4))));

/** The beat at which the column `k` of a note stands: they share it equally. */
const beatAt = (chunk: Chunk, k: number): string =>
  beatOf(add(chunk.offset, multiply(figureTime(chunk), time(k))), chunk.measure.bar.meter?.beatValue);

/** Unicode, "Miscellaneous Symbols" and "Musical Symbols". */
const SIGNS: Readonly<Record<AccidentalSign, string>> = { '#': '♯', '##': '𝄪', b: '♭', bb: '𝄫', n: '♮' };

function figureElement(
  { number, accidental, accidentalFirst, stroked, editors }: Figure,
  held: boolean,
  resp: string | undefined,
): XmlElement {
  const sign = accidental === undefined ? '' : SIGNS[accidental];
  const text = accidentalFirst === true ? `${sign}${number ?? ''}` : `${number ?? ''}${sign}`;
  const attributes = { extender: held ? 'true' : undefined };
  const stroke = stroked ? xml('rend', { rend: 'line-through' }, text) : undefined;
  if (editors) return xml('f', attributes, [xml('supplied', { resp }, stroke === undefined ? text : [stroke])]);
  return xml('f', attributes, stroke === undefined ? text : [stroke]);
}
