/** Every form that what stands in a lane can take, by a name of its own, and those that a file shows. */
import { spanWords } from '../../grammar/lanes/forms';
import type {
  Barline,
  EventItem,
  FiguresItem,
  FileTree,
  Item,
  MarkForm,
  OptionsItem,
  Readings,
  SpanItem,
  Suffix,
  ValueForm,
} from '../../grammar/tree';
import { clefNames } from '../../grammar/vocabulary/clefs';
import { meterSigns } from '../../grammar/vocabulary/meters';
import { shapeByName } from '../../grammar/vocabulary/shapes';
import { changes } from '../../grammar/vocabulary/statements';
import { namesOf } from '../../server/signs/tables';

const of = (what: string, ...forms: readonly string[]): string[] => forms.map((form) => `${what} ${form}`);
const signs = ['#', '##', 'b', 'bb', 'n'];
/** What round brackets say of a mark that is not the name of a curve. */
const MARK_WORDS = ['above', 'below', 'after', 'dot', 'from main'];
/** What a curve can begin and end on. */
const CURVE_ENDS = ['note', 'rest', 'gap', 'repeat', 'barline'];

/** The forms that one that can be limited to readings, or doubted, takes. */
const judged = (what: string): string[] => of(what, "editor's", 'doubtful', 'in readings', 'not in readings');

/** All of them. Words, signs and shapes of a table are the table's. */
export const ALL_FORMS: readonly string[] = [
  ...of('lane', 'lane', 'fig', 'text', 'witness', 'fig of a witness', 'text of a witness'),
  'lane text, a further stanza',
  ...of('lane', 'open at its end', 'over two lines'),
  ...of('event', 'note', 'rest', 'barRest', 'gap', 'barGap', 'repeat', 'chord'),
  ...of('annotation', 'in words', 'by name'),
  ...of('annotation on a', 'note', 'mark', 'rest', 'span', 'place', 'barline'),
  ...of('value', 'Mx', 'L', 'B', '1', '2', '4', '8', '16', '32', '64', '128'),
  ...of('value', 'dotted', 'dotted twice', 'x', 'x5in4', 'doubtful'),
  ...of('accidental', ...signs, "editor's", 'cautionary', 'above the note', 'of a sign'),
  ...of('note', 'doubtful', 'without its octave', 'with its octave'),
  ...of('chord member moved', 'up', 'down', 'home'),
  ...['tie', 'lone tie', ...judged('tie'), ...judged('lone tie')],
  ...of('mark', 'sign', 'finger', 'accidental', 'curveStart', 'curveEnd', 'weight'),
  ...of('mark', 'through', 'fermata', 'dot', 'stroke', 'renvoi', 'fin'),
  ...of('mark on a', ...CURVE_ENDS),
  ...judged('mark'),
  ...of('mark', 'across lanes', 'of substituted fingers'),
  ...of('mark with', 'a name', ...MARK_WORDS),
  ...of('sign drawn', 'above', 'before', 'after', 'between', 'at the stem', 'beside', 'for a chord', 'in a set'),
  ...of('curve', 'u', 'line', 'end', 'end by pitch', 'without an end', 'without a beginning'),
  ...of('curve from a', ...CURVE_ENDS),
  ...of('curve to a', ...CURVE_ENDS),
  ...judged('curve'),
  ...of('span', 'tuplet', ...spanWords.keys()),
  ...of('span', 'in readings', 'not in readings', 'with a ratio', 'with a proportion', 'in a span', 'in options'),
  ...of('options', 'labelled', 'with a place', 'with a reason', 'with several labels', 'with barlines'),
  ...of('options', 'in a span', 'in options'),
  ...of('option', 'omit', 'of a witness', 'of a layer', 'of a reading', 'sic', 'corr', 'doubtful'),
  ...of('lost', '?', 'a value'),
  ...of('beam', 'joined', 'parted'),
  ...of('words', 'plain', 'above', 'below'),
  ...of('figures', 'figures', 'none', 'hold', 'one after another', 'stacked', 'stroked', "editor's"),
  ...of('figures', 'accidental alone', 'accidental before', 'accidental after'),
  ...of('syllable', 'syllable', 'none', 'hold', 'going on', 'quoted'),
  ...of('change', ...Object.keys(changes)),
  ...of('barline', '|', '||', '|||', ':||', '||:', ':||:', "editor's"),
  ...of('system', 'measured', 'loose', 'free'),
  ...of('meter', ...Object.keys(meterSigns), 'of another length', 'without a usual length'),
  ...of('clef', ...Object.keys(clefNames), 'two at once'),
];

type See = (form: string) => void;

/** All forms that a file shows. */
export function formsIn(tree: FileTree): Set<string> {
  const seen = new Set<string>();
  const see: See = (form) => seen.add(form);
  const readings = namesDeclared(tree, 'reading');
  const look = new Look(see, readings);
  for (const { kind, statements, lanes } of tree.blocks) {
    for (const { tree: one } of statements) {
      if (kind === 'system' && one.statement.keyword === 'system') systemForms(one.text, see);
    }
    for (const { tree: lane, witness, open } of lanes) {
      see(`lane ${witness === undefined ? lane.kind : 'witness'}`);
      barlineForms(open, see);
      look.suffixes(lane.opening.suffixes, 'barline');
      if (lane.segments.some(({ bar }) => bar === undefined)) see('lane open at its end');
      for (const { items, bar } of lane.segments) {
        look.items(items, '');
        if (bar === undefined) continue;
        barlineForms(bar, see);
        look.suffixes(bar.suffixes, 'barline');
      }
    }
    subLanesOfWitnesses(lanes, see);
    if (lanes.some(({ tree: lane }, i) => lane.kind === 'text' && lanes[i - 1]?.tree.kind === 'text')) {
      see('lane text, a further stanza');
    }
  }
  return seen;
}

function namesDeclared({ blocks }: FileTree, keyword: string): Set<string> {
  const names = new Set<string>();
  for (const { statements } of blocks) {
    for (const { tree } of statements) {
      const [name] = tree.statement.args;
      if (tree.statement.keyword === keyword && name?.kind === 'name') names.add(name.text);
    }
  }
  return names;
}

/** Under the lane of a witness stand its own sub-lanes. */
function subLanesOfWitnesses(lanes: FileTree['blocks'][number]['lanes'], see: See): void {
  let ofWitness = false;
  for (const { tree, witness } of lanes) {
    if (tree.kind === 'lane') ofWitness = witness !== undefined;
    else if (ofWitness) see(`lane ${tree.kind} of a witness`);
  }
}

function systemForms(text: string, see: See): void {
  const [, kind] = /^system\s+(loose|free)\b/.exec(text) ?? [];
  see(`system ${kind ?? 'measured'}`);
  stateForms(text, see);
}

/** Clefs and meters of a head or a change. */
function stateForms(text: string, see: See): void {
  const [, sign = '', length] = /\bmeter\s+([^\s)]+)(?:\s*=\s*([^\s)]+))?/.exec(text) ?? [];
  if (sign !== '') see(`meter ${sign}`);
  if (length !== undefined && Object.hasOwn(meterSigns, sign)) see('meter of another length');
  if (length !== undefined && !Object.hasOwn(meterSigns, sign)) see('meter without a usual length');
  for (const [clefs] of text.matchAll(/\b[GCF]\d(?:\+[GCF]\d)?/g))
    see(clefs.includes('+') ? 'clef two at once' : `clef ${clefs}`);
}

function barlineForms({ shape, editors, again }: Barline, see: See): void {
  see(`barline ${shape}`);
  if (editors) see("barline editor's");
  if (again !== undefined) see('lane over two lines');
}

function valueForms({ text, dots, proportion, doubtful }: ValueForm, see: See): void {
  see(`value ${text.replace(/^(Mx|L|B|\d+).*/, '$1')}`);
  if (dots > 0) see(dots > 1 ? 'value dotted twice' : 'value dotted');
  if (proportion !== undefined) see(text.includes('in') ? 'value x5in4' : 'value x');
  if (doubtful) see('value doubtful');
}

function figureForms({ what, columns }: FiguresItem, see: See): void {
  see(`figures ${what}`);
  if (columns.length > 1) see('figures one after another');
  if (columns.some((column) => column.length > 1)) see('figures stacked');
  for (const { number, accidental, accidentalFirst, stroked, editors } of columns.flat()) {
    if (stroked) see('figures stroked');
    if (editors) see("figures editor's");
    if (number === undefined) see('figures accidental alone');
    else if (accidental !== undefined) see(`figures accidental ${accidentalFirst ? 'before' : 'after'}`);
  }
}

interface Judged {
  readonly editors: boolean;
  readonly doubtful: boolean;
  readonly readings?: Readings;
}

function judgedForms(what: string, { editors, doubtful, readings }: Judged, see: See): void {
  if (editors) see(`${what} editor's`);
  if (doubtful) see(`${what} doubtful`);
  limitForms(what, readings, see);
}

function limitForms(what: string, readings: Readings | undefined, see: See): void {
  if (readings !== undefined) see(`${what} ${readings.not ? 'not in' : 'in'} readings`);
}

const placeWords: Readonly<Record<string, string>> = { stem: 'at the stem' };

class Look {
  constructor(
    private readonly see: See,
    private readonly readings: ReadonlySet<string>,
  ) {}

  /** @param within what holds the items: `span`, `options` or nothing */
  items(items: readonly Item[], within: string): void {
    for (const item of items) this.item(item, within);
  }

  private item(item: Item, within: string): void {
    const { see } = this;
    if (within !== '' && (item.kind === 'span' || item.kind === 'options')) see(`${item.kind} in ${within}`);
    if (item.kind === 'event') this.event(item);
    else if (item.kind === 'value') valueForms(item.form, see);
    else if (item.kind === 'span') this.span(item);
    else if (item.kind === 'options') this.options(item);
    else if (item.kind === 'figures') figureForms(item, see);
    else if (item.kind === 'lost') see(item.form === undefined ? 'lost ?' : 'lost a value');
    else if (item.kind === 'beam') see(item.join ? 'beam joined' : 'beam parted');
    else if (item.kind === 'words') see(`words ${item.place ?? 'plain'}`);
    else if (item.kind === 'change') {
      see(`change ${item.change.word}`);
      stateForms(item.change.text, see);
    } else if (item.kind === 'barline') {
      barlineForms(item, see);
      if (within === 'options') see('options with barlines');
    } else if (item.kind === 'syllable') {
      see(`syllable ${item.what}`);
      if (item.goesOn) see('syllable going on');
      if (item.len > item.text.length + 1) see('syllable quoted');
    }
  }

  private span({ head, suffixes, items }: SpanItem): void {
    const { word, readings, ratio, proportion } = head;
    this.see(`span ${word ?? 'tuplet'}`);
    limitForms('span', readings, this.see);
    if (ratio !== undefined) this.see('span with a ratio');
    if (word !== undefined && proportion !== undefined) this.see('span with a proportion');
    this.suffixes(suffixes, 'span');
    this.items(items, 'a span');
  }

  private event({ what, suffixes, members, tie }: EventItem): void {
    const { see } = this;
    see(`event ${what}`);
    if (members.length > 1) see('event chord');
    this.suffixes(suffixes, what);
    // A lone `=` is a tie even where it says nothing more.
    if (what === 'repeat') see('lone tie');
    if (tie !== undefined) judgedForms('lone tie', tie, see);
    for (const member of members) {
      this.suffixes(member.suffixes, 'note');
      if (member.stave !== undefined) see(`chord member moved ${member.stave}`);
      if (member.tie !== undefined) see('tie');
      if (member.tie !== undefined) judgedForms('tie', member.tie, see);
      const { accidental, editors, cautionary, doubtful, octave } = member.spelling;
      if (accidental !== undefined) see(`accidental ${accidental}`);
      if (editors !== undefined) see("accidental editor's");
      if (cautionary !== undefined) see('accidental cautionary');
      if (doubtful) see('note doubtful');
      see(octave === undefined ? 'note without its octave' : 'note with its octave');
    }
  }

  private options({ place, reasons, options, suffixes }: OptionsItem): void {
    const { see } = this;
    see('options labelled');
    if (place !== undefined) see('options with a place');
    if (reasons.length > 0) see('options with a reason');
    this.suffixes(suffixes, 'place');
    for (const { omit, labels, items } of options) {
      if (omit) see('option omit');
      if (labels.length > 1) see('options with several labels');
      for (const { name, layer, doubtful } of labels) {
        if (doubtful) see('option doubtful');
        if (name === 'sic' || name === 'corr') see(`option ${name}`);
        else if (this.readings.has(name)) see('option of a reading');
        else see(layer === undefined ? 'option of a witness' : 'option of a layer');
      }
      this.items(items, 'options');
    }
  }

  suffixes(list: readonly Suffix[], on: string): void {
    const { see } = this;
    let before: MarkForm | undefined;
    const drawn: string[] = [];
    for (const suffix of list) {
      if (suffix.kind === 'annotation') {
        see(suffix.ref === undefined ? 'annotation in words' : 'annotation by name');
        see(`annotation on a ${before === undefined ? on : 'mark'}`);
        continue;
      }
      see(`mark on a ${on}`);
      this.mark(suffix.form, on, before);
      if (suffix.form.type === 'sign') drawn.push(suffix.form.name);
      before = suffix.form;
    }
    if (drawn.length > 1) see('sign drawn in a set');
  }

  private mark(form: MarkForm, on: string, before: MarkForm | undefined): void {
    const { see } = this;
    see(`mark ${form.type === 'other' ? form.name : form.type}`);
    const isCurve = form.type === 'curveStart' || form.type === 'curveEnd';
    judgedForms(isCurve ? 'curve' : 'mark', form, see);
    if (form.type === 'curveStart') {
      see(`curve ${form.name}`);
      see(`curve from a ${on}`);
      if (form.openEnded) see('curve without an end');
    }
    if (form.type === 'curveEnd') {
      see(`curve to a ${on}`);
      see(form.openEnded ? 'curve without a beginning' : 'curve end');
      if (form.begunOn !== undefined) see('curve end by pitch');
    }
    if (form.type === 'accidental') see(`accidental ${before?.type === 'sign' ? 'of a sign' : 'above the note'}`);
    if (form.type === 'sign') this.sign(form.name);
    if ((form.fingers?.length ?? 0) > 1) see('mark of substituted fingers');
    if (form.linked) see('mark across lanes');
    const said = form.parameters.join(' ');
    if (MARK_WORDS.includes(said)) see(`mark with ${said}`);
    else if (isCurve && said !== '') see('mark with a name');
  }

  /** Where its shape is drawn; of a name that tables give to several shapes the first counts. */
  private sign(name: string): void {
    const own = shapeByName(name);
    const named = namesOf(name)[0]?.shapes.map(shapeByName) ?? [];
    for (const shape of own === undefined ? named : [own]) {
      if (shape === undefined) continue;
      this.see(`sign drawn ${placeWords[shape.place] ?? shape.place}`);
      if (shape.drawnFor === 'chord') this.see('sign drawn for a chord');
    }
  }
}
