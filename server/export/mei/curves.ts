/** Curves and straight lines, from where they begin to where they end; what they mean is not said. */
import type { Environment } from '../../score/environment';
import type { Piece } from '../../score/score';
import { curvesOf, type PlacedCurve, type PlacedEnd } from '../../score/walk';
import type { Measure } from '../measures';
import type { Written } from '../written';
import { type XmlElement, xml } from '../xml';
import { limits, withDoubt, words } from './editorial';
import type { Names } from './names';

/** An end as MEI tells it. */
interface End {
  readonly id: string;
  readonly measure: Measure;
  /** On the barline that ends the bar. */
  readonly onBarline: boolean;
}

export interface PlacedElement {
  readonly measure: Measure;
  readonly element: XmlElement;
}

export interface DrawnCurve extends PlacedElement {
  readonly id: string;
  /** The marks of its ends. */
  readonly ends: readonly PlacedEnd[];
}

/** The curves of a piece, each with the measure where it stands; those of which no end is exported are left out. */
export function curveElements(
  piece: Piece,
  written: Written,
  names: Names,
  environment: Environment,
): readonly DrawnCurve[] {
  return curvesOf(piece).flatMap((curve) => {
    const start = curve.start && endOf(curve.start, piece, written, names, 'start');
    const end = curve.end && endOf(curve.end, piece, written, names, 'end');
    const measure = start?.measure ?? end?.measure;
    if (measure === undefined) return [];
    const id = names.part((start ?? end)?.id ?? '', 'u', 1);
    const ends = [curve.start, curve.end].filter((one) => one !== undefined);
    return [{ measure, id, ends, element: curveElement(curve, start, end, id, environment) }];
  });
}

function endOf(
  { end, system, voice }: PlacedEnd,
  piece: Piece,
  written: Written,
  names: Names,
  side: 'start' | 'end',
): End | undefined {
  const event = voice.events[end.event];
  const opens = event !== undefined && event.bar === 0 && system.score.bars[0]?.continues === true;
  if (end.onBarline && !opens) {
    const bar = event === undefined ? (voice.events.at(-1)?.bar ?? 0) : event.bar - 1;
    const measure = written.measures.find((one) => one.piece === piece && one.bar.index === system.firstBar + bar);
    if (measure !== undefined) return { id: names.ofBar(measure), measure, onBarline: true };
  }
  const chunks = event === undefined ? [] : written.chunksAt(system, event);
  const chunk = side === 'start' ? chunks[0] : chunks.at(-1);
  if (chunk === undefined) return undefined;
  const id = end.member === undefined ? names.of(chunk) : names.ofHead({ chunk, member: end.member });
  return { id, measure: chunk.measure, onBarline: end.onBarline };
}

const ELEMENTS = { u: 'curve', line: 'line' } as const;

function curveElement(
  curve: PlacedCurve,
  start: End | undefined,
  end: End | undefined,
  id: string,
  environment: Environment,
): XmlElement {
  const forms = [curve.form, ...[curve.start, curve.end].flatMap((one) => (one === undefined ? [] : [one.end.form]))];
  const editors = forms.some((form) => form.editors);
  const doubtful = forms.some((form) => form.doubtful);
  const parameters = forms.flatMap((form) => form.parameters);
  const placement = parameters.find((one) => one === 'above' || one === 'below');
  const { attributes: names, except } = limits(
    forms.find(({ readings }) => readings !== undefined)?.readings,
    environment,
  );
  const element = xml(ELEMENTS[curve.kind], {
    'xml:id': id,
    startid: start && `#${start.id}`,
    endid: end && `#${end.id}`,
    // A line has both ends in MEI; one that is not shown lies at the end of the bar or before its beginning.
    ...(curve.kind === 'line' && end === undefined ? { tstamp2: '1m+0' } : {}),
    ...(curve.kind === 'line' && start === undefined ? { tstamp: '0' } : {}),
    ...(curve.kind === 'u'
      ? { curvedir: placement, lform: editors ? 'dashed' : doubtful ? 'dotted' : undefined }
      : { place: placement, form: editors ? 'dashed' : doubtful ? 'dotted' : undefined }),
    ...names,
    label: parameters.find((one) => one !== 'above' && one !== 'below'),
    type: words(
      curve.start === undefined && 'start-not-shown',
      curve.end === undefined && 'end-not-shown',
      start?.onBarline === true && 'start-on-barline',
      end?.onBarline === true && 'end-on-barline',
      except,
    ),
  });
  return withDoubt(element, { editors, doubtful }, environment);
}
