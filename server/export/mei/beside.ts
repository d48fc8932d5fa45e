/** What stands beside the staves of a measure: ties, curves, signs, words, figures, tempi, annotations. */
import { putUnder } from '../../../grammar/lists';
import { add, equal, format, subtract, type Time } from '../../../grammar/time';
import type { Environment } from '../../score/environment';
import type {
  AppliedAnnotation,
  AppliedMark,
  DrawnBarline,
  Score,
  ScoreSystem,
  Source,
  Tempo,
} from '../../score/score';
import { changesOf } from '../../score/walk';
import { absolute, type Chunk } from '../chunks';
import { shapeOf } from '../marks';
import type { Measure } from '../measures';
import { type Passage, passagesIn } from '../passages';
import { tempiOf } from '../tempi';
import { type TieLink, tieLinks } from '../tieLinks';
import { decimal, writtenValue } from '../values';
import type { Written } from '../written';
import { type XmlAttributes, type XmlElement, xml } from '../xml';
import { annotationElement } from './annotations';
import { curveElements } from './curves';
import { layerOf } from './definitions';
import { isState, limits, responsible, withDoubt, words } from './editorial';
import { beatOf, figureElements } from './figures';
import { partId } from './ids';
import type { Names } from './names';
import { isColour } from './notes';
import type { SaidOfPlace } from './placeNotes';
import { placeMark, placeOf } from './places';
import { markElements, standsInNote } from './signs';
import { durationOf } from './tables';

export interface Beside {
  readonly beside: ReadonlyMap<Measure, readonly XmlElement[]>;
  /** What is said of places of options. */
  readonly said: readonly SaidOfPlace[];
}

/** All of it, by measure. */
export const besideMeasures = (score: Score, written: Written, names: Names): Beside =>
  new Gatherer(score, written, names).gather();

class Gatherer {
  private readonly found: Map<Measure, XmlElement[]>;
  private readonly said: SaidOfPlace[] = [];
  private readonly environment: Environment;
  /** Signs drawn across lanes, by shape and moment, with all that they stand at. */
  private readonly linked = new Map<string, string[]>();
  /** The curves that begin or end with a mark. */
  private readonly curves = new Map<string, string>();
  /** Whose it is what is put next, until a mark says so. */
  private owner: string | undefined;

  constructor(
    private readonly score: Score,
    private readonly written: Written,
    private readonly names: Names,
  ) {
    this.environment = score.environment;
    this.found = new Map(written.measures.map((measure) => [measure, []]));
  }

  gather(): Beside {
    const voices = [...this.written.byVoice.values()];
    const curves = [...new Set(this.written.measures.map((measure) => measure.piece))].flatMap((piece) =>
      curveElements(piece, this.written, this.names, this.environment),
    );
    for (const { ends, id } of curves)
      for (const { end, system } of ends) this.curves.set(spotOf(system, end.source), id);
    for (const measure of this.written.measures) this.barlines(measure);
    this.tempi();
    for (const chunk of voices.flat()) this.link(chunk);
    for (const chunks of voices) {
      const links = tieLinks(chunks);
      for (const link of links) {
        this.owns(link.from.chunk, 'tie');
        this.tie(link);
      }
      this.owner = undefined;
      this.tiesFromBefore(chunks, links);
      for (const chunk of chunks.filter(({ first }) => first)) {
        this.owns(chunk, 'event');
        this.event(chunk);
      }
      for (const passage of passagesIn(chunks)) {
        this.owns(passage.chunks[0], 'passage');
        this.passage(passage);
      }
      for (const { chunk, element } of figureElements(chunks, this.names, responsible(this.environment))) {
        this.owns(chunk, 'figures');
        this.put(chunk.measure, element);
      }
    }
    this.owner = undefined;
    for (const { measure, element, id } of curves) this.put(measure, placeMark(`curve ${id}`), element);
    return { beside: this.found, said: this.said };
  }

  private put(measure: Measure, ...elements: readonly XmlElement[]): void {
    if (elements.length === 0) return;
    const marks = this.owner === undefined ? [] : [placeMark(this.owner)];
    this.owner = undefined;
    this.found.get(measure)?.push(...marks, ...elements);
  }

  /** Says whose it is what is put next. */
  private owns(chunk: Chunk, what: string): void {
    this.owner = `${what} ${placeOf(chunk) ?? this.names.of(chunk)}`;
  }

  // ─── ties ────────────────────────────────────────────────────────────────────────────────────────────────────

  private tie({ from, to, form }: TieLink): void {
    const { attributes: names, except } = limits(form?.readings, this.environment);
    const tie = xml('tie', {
      'xml:id': this.names.part(this.names.ofHead(from), 't', 1),
      startid: `#${this.names.ofHead(from)}`,
      endid: to && `#${this.names.ofHead(to)}`,
      tstamp2: to === undefined ? endOf(from.chunk) : undefined,
      lform: form?.editors === true ? 'dashed' : form?.doubtful === true ? 'dotted' : undefined,
      ...names,
      type: form === undefined ? 'through' : except,
    });
    this.put(from.chunk.measure, withDoubt(tie, form ?? {}, this.environment));
  }

  /** Ties from a note that is not exported, or from before a first ending into a further one. */
  private tiesFromBefore(chunks: readonly Chunk[], links: readonly TieLink[]): void {
    const reached = new Set(links.flatMap(({ to }) => (to === undefined ? [] : [this.names.ofHead(to)])));
    for (const chunk of chunks.filter(({ first, event }) => first && event.small === undefined)) {
      for (const [member, { tiedFrom }] of chunk.event.members.entries()) {
        const id = this.names.ofHead({ chunk, member });
        if (!tiedFrom || reached.has(id)) continue;
        const tie = { 'xml:id': this.names.part(id, 't', 1), tstamp: '0', endid: `#${id}`, type: 'from-before' };
        this.put(chunk.measure, xml('tie', tie));
      }
    }
  }

  // ─── events ──────────────────────────────────────────────────────────────────────────────────────────────────

  private event(chunk: Chunk): void {
    const { event, measure } = chunk;
    const id = this.names.of(chunk);
    for (const [i, { text, place }] of event.words.entries()) {
      this.put(measure, xml('dir', { 'xml:id': this.names.part(id, 'w', i + 1), startid: `#${id}`, place }, text));
    }
    this.marksAt(chunk, event.marks, id);
    this.annotate(measure, event.annotations, id);
    for (const [m, { marks, annotations }] of event.members.entries()) {
      const head = this.names.ofHead({ chunk, member: m });
      this.marksAt(chunk, marks, head, id);
      this.annotate(measure, annotations, head);
    }
  }

  /** @param at the id of the note or event that bears them; `whole` that of the chord, at which some signs stand */
  private marksAt(chunk: Chunk, marks: readonly AppliedMark[], at: string, whole = at): void {
    const bears = chunk.event.kind === 'note';
    for (const [i, mark] of marks.entries()) {
      const id = this.names.part(at, 'm', i + 1);
      const owner = shapeOf(mark)?.drawnFor === 'chord' ? whole : at;
      const all = mark.form.linked ? this.linked.get(momentOf(chunk, mark)) : undefined;
      const isElsewhere = all !== undefined && all[0] !== owner;
      const elements =
        isElsewhere || (bears && standsInNote(mark))
          ? []
          : markElements({ mark, id, at: all ?? [owner] }, this.environment);
      this.put(chunk.measure, ...elements);
      const curve = this.curves.get(spotOf(chunk.system, mark.source));
      this.annotate(chunk.measure, mark.annotations, curve ?? (elements.length > 0 ? id : at));
    }
  }

  private link(chunk: Chunk): void {
    if (!chunk.first) return;
    const { event } = chunk;
    const heads = [
      ...event.marks.map((mark) => ({ mark, at: this.names.of(chunk) })),
      ...event.members.flatMap(({ marks }, member) =>
        marks.map((mark) => ({ mark, at: this.names.ofHead({ chunk, member }) })),
      ),
    ];
    for (const { mark, at } of heads) {
      if (!mark.form.linked) continue;
      const owner = shapeOf(mark)?.drawnFor === 'chord' ? this.names.of(chunk) : at;
      const key = momentOf(chunk, mark);
      putUnder(this.linked, key, owner);
    }
  }

  private annotate(measure: Measure, annotations: readonly AppliedAnnotation[], ...about: readonly string[]): void {
    const [first = ''] = about;
    for (const [i, annotation] of annotations.entries()) {
      const id = this.names.part(first, 'a', i + 1);
      this.put(measure, annotationElement(annotation, id, about, this.environment));
    }
  }

  // ─── passages ────────────────────────────────────────────────────────────────────────────────────────────────

  /** What is said of a passage, its hints, and the brackets of ligatures and coloration. */
  private passage({ what, chunks, last }: Passage): void {
    const [first] = chunks;
    const ids = chunks.map((chunk) => this.names.of(chunk));
    if (what === first.event.chosen[0]) this.ofPlace(first, what.annotations, ids);
    else this.annotate(first.measure, what.annotations, ...ids);
    this.marksAt(last, what.marks, this.names.of(last));
    if (!('head' in what) || isState(what.head) || what.head.word === 'small') return;
    const { word, text, readings } = what.head;
    const id = this.names.part(this.names.of(first), 'h', 1);
    if (word === 'lig' || isColour(word)) {
      const func = word === 'lig' ? 'ligature' : 'coloration';
      const attributes = {
        'xml:id': id,
        startid: `#${ids[0]}`,
        endid: `#${ids.at(-1)}`,
        func,
        type: word === 'lig' ? undefined : word,
      };
      this.put(first.measure, xml('bracketSpan', attributes));
      return;
    }
    const { attributes: names, except } = limits(readings, this.environment);
    const plist = ids.map((id) => `#${id}`).join(' ');
    const type = ['hint', word, except].filter((one) => one !== undefined).join(' ');
    this.put(first.measure, xml('annot', { 'xml:id': id, plist, ...names, type }, hintText(text)));
  }

  private ofPlace(first: Chunk, annotations: readonly AppliedAnnotation[], notes: readonly string[]): void {
    const place = placeOf(first) ?? '';
    for (const [i, annotation] of annotations.entries()) {
      const element = annotationElement(annotation, partId(place, 'a', i + 1), notes, this.environment);
      this.said.push({ place, measure: this.names.ofBar(first.measure), notes, element });
    }
  }

  // ─── barlines ────────────────────────────────────────────────────────────────────────────────────────────────

  private barlines(measure: Measure): void {
    const bar = this.names.ofBar(measure);
    this.onBarline(measure, measure.bar.opening, bar, 'barline-left');
    this.onBarline(measure, measure.bar.closing, bar, 'barline-right');
    for (const [i, inner] of measure.bar.inner.entries()) {
      this.onBarline(measure, inner, this.names.ofInnerBarline(measure, i));
    }
  }

  /** @param side says which barline is meant where the bar is named */
  private onBarline(measure: Measure, drawn: DrawnBarline | undefined, at: string, side?: string): void {
    if (drawn === undefined) return;
    for (const [i, mark] of drawn.marks.entries()) {
      const id = this.names.part(at, 'm', i + 1);
      const elements = markElements({ mark, id, at: [at] }, this.environment);
      this.put(measure, ...elements.map((element) => withType(element, side)));
      this.annotate(measure, mark.annotations, elements.length > 0 ? id : at);
    }
    for (const [i, annotation] of drawn.annotations.entries()) {
      const id = this.names.part(at, 'a', i + 1);
      this.put(measure, withType(annotationElement(annotation, id, [at], this.environment), side));
    }
  }

  // ─── tempi and manuals ───────────────────────────────────────────────────────────────────────────────────────

  private tempi(): void {
    const { measures } = this.written;
    const byBar = new Map(measures.map((measure) => [measure.bar, measure]));
    for (const first of measures.filter(({ opens }) => opens)) {
      for (const { tempo, bar, onset } of tempiOf(first, this.score)) {
        const measure = byBar.get(bar);
        if (measure === undefined) continue;
        const own = { 'xml:id': this.nextIdIn(measure), resp: responsible(this.environment) };
        this.put(measure, tempoElement(tempo, measure, subtract(onset, bar.onset), own));
      }
      for (const { change, onset, bar } of changesOf(first.piece)) {
        const measure = byBar.get(bar);
        if (change.manual === undefined || measure === undefined) continue;
        const { voice, name } = change.manual;
        const staff = (this.environment.voices[voice]?.stave ?? 0) + 1;
        const tstamp = beatOf(subtract(onset, bar.onset), bar.meter?.beatValue);
        const layer = layerOf(this.environment, voice);
        const attributes = { 'xml:id': this.nextIdIn(measure), type: 'manual', tstamp, staff, layer };
        this.put(measure, xml('annot', attributes, name));
      }
    }
  }

  /** For what stands at a time and not at a note. */
  private readonly nextIdIn = (measure: Measure): string => this.names.part(this.names.ofBar(measure), 'q', 1);
}

/** `inegal 2:1` of `{inegal 2:1:french`. */
const hintText = (head: string): string => head.replace(/^\{/, '').replace(/:!?[A-Za-z].*$/, '');

/** The element with one more word of its type. */
const withType = (element: XmlElement, word: string | undefined): XmlElement => ({
  ...element,
  attributes: { ...element.attributes, type: words(element.attributes.type as string | undefined, word) },
});

/** When a chunk ends (`data.MEASUREBEAT`): the beat of its measure, or the first of the next one. */
function endOf({ offset, duration, measure }: Chunk): string {
  const end = add(offset, duration);
  return equal(end, measure.duration) ? '1m+1' : `0m+${beatOf(end, measure.bar.meter?.beatValue)}`;
}

/** One text for a place in the text. */
const spotOf = ({ block }: ScoreSystem, { lane, pos }: Source): string => `${block} ${lane} ${pos}`;

/** One text for marks that are one sign across lanes. */
const momentOf = (chunk: Chunk, { form }: AppliedMark): string =>
  `${chunk.measure.piece.bars.length} ${chunk.measure.index} ${form.name} ${format(absolute(chunk))}`;

/** The editor's measure of time: no source says it. */
function tempoElement({ value, perMinute }: Tempo, { bar }: Measure, offset: Time, own: XmlAttributes): XmlElement {
  const { dur, dots } = durationOf(writtenValue(value));
  return xml('tempo', {
    ...own,
    tstamp: beatOf(offset, bar.meter?.beatValue),
    mm: decimal(perMinute),
    'mm.unit': dur,
    'mm.dots': dots,
    type: 'editorial',
  });
}
