/** The bar of playing: what is chosen in it, and what it shows. */
import type { ChoiceOffer, TuningOffer } from '../../../server/features/protocol';
import { element } from './host';

export type SideName = 'a' | 'b';
const SIDES: readonly SideName[] = ['a', 'b'];

/** Where playing begins: at the note that is marked, with its bar, or at the top of the leaf. */
export type From = 'note' | 'bar' | 'leaf';

interface Side {
  readonly button: HTMLElement;
  readonly reading: HTMLSelectElement;
  readonly tuning: HTMLSelectElement;
}

export interface Heeding {
  played(): void;
  /** Of what is played now: its reading, temperament or tempo. */
  changed(): void;
  /** The reading of the page was chosen here. */
  read(reading: string): void;
  /** B is to stand beneath it on the page; null: no more. */
  putBeneath(reading: string | null): void;
  loopChanged(): void;
  loudnessChanged(): void;
  muted(voice: number, isMuted: boolean): void;
}

export class Controls {
  private side: SideName = 'a';
  private readonly beneath = element<HTMLSelectElement>('beneath');
  /** The reading that stands there: known, it may be, before the choices are. */
  private shownBeneath = '';
  private readonly play = element('play');
  private readonly from = element<HTMLSelectElement>('from');
  private readonly pace = element<HTMLSelectElement>('pace');
  private readonly volume = element<HTMLInputElement>('volume');
  private readonly loop = element('loop');
  private readonly loopFrom = element<HTMLInputElement>('loop-from');
  private readonly loopTo = element<HTMLInputElement>('loop-to');
  private readonly voices = element('voices');
  private readonly sides: Readonly<Record<SideName, Side>> = { a: sideOf('a'), b: sideOf('b') };
  private readonly muted = new Set<string>();

  constructor(private readonly heeding: Heeding) {
    this.play.addEventListener('click', () => heeding.played());
    this.pace.addEventListener('change', () => heeding.changed());
    this.volume.addEventListener('input', () => heeding.loudnessChanged());
    this.loop.addEventListener('click', () => this.toggleLoop());
    for (const field of [this.loopFrom, this.loopTo]) field.addEventListener('change', () => heeding.loopChanged());
    this.beneath.addEventListener('change', () => {
      this.shownBeneath = this.beneath.value;
      if (this.shownBeneath === '') heeding.putBeneath(null);
      else this.chooseB(this.shownBeneath);
    });
    for (const name of SIDES) {
      const { button, reading, tuning } = this.sides[name];
      button.addEventListener('click', () => this.take(name));
      tuning.addEventListener('change', () => this.sideChanged(name));
      reading.addEventListener('change', () => {
        // That of A is the reading of the page, which comes back with it.
        if (name === 'a') heeding.read(reading.value);
        else this.chooseB(reading.value);
      });
    }
  }

  /** Whether A or B is heard. */
  get heard(): SideName {
    return this.side;
  }

  /** What stands beneath is what is heard as B. */
  private chooseB(reading: string): void {
    this.sides.b.reading.value = reading;
    if (this.shownBeneath !== '') {
      this.showBeneath(reading);
      this.heeding.putBeneath(reading);
    }
    this.sideChanged('b');
  }

  showBeneath(reading: string | null): void {
    this.shownBeneath = reading ?? '';
    this.beneath.value = this.shownBeneath;
    if (reading !== null) this.sides.b.reading.value = reading;
  }

  /** What of the two readings and temperaments is to be heard, and how fast. */
  get wish(): { readonly reading: string; readonly tuning: string | null; readonly pace: number } {
    const { reading, tuning } = this.sides[this.side];
    return { reading: reading.value, tuning: tuning.value || null, pace: Number(this.pace.value) };
  }

  get begin(): From {
    return this.from.value as From;
  }

  /** From 0 to 1: twice as far is four times as loud, as one hears it. */
  get loudness(): number {
    return (Number(this.volume.value) / 100) ** 2;
  }

  /** The other reading or temperament. */
  swap(): void {
    this.take(this.side === 'a' ? 'b' : 'a');
  }

  private take(side: SideName): void {
    if (side === this.side) return;
    this.side = side;
    for (const name of SIDES) this.sides[name].button.setAttribute('aria-pressed', String(name === side));
    this.heeding.changed();
  }

  private sideChanged(side: SideName): void {
    if (side === this.side) this.heeding.changed();
  }

  // ─── the loop ────────────────────────────────────────────────────────────────────────────────────────────────

  /** The numbers of its first and last bar; undefined where nothing is repeated. */
  get bars(): { readonly from: string; readonly to: string } | undefined {
    const [from, to] = [this.loopFrom.value.trim(), this.loopTo.value.trim()];
    return this.isLooping && from !== '' ? { from, to: to || from } : undefined;
  }

  get isLooping(): boolean {
    return this.loop.getAttribute('aria-pressed') === 'true';
  }

  toggleLoop(): void {
    this.loop.setAttribute('aria-pressed', String(!this.isLooping));
    this.heeding.loopChanged();
  }

  /** From a bar to another. */
  loopOver(from: string, to: string): void {
    this.loopFrom.value = from;
    this.loopTo.value = to;
    this.loop.setAttribute('aria-pressed', 'true');
    this.heeding.loopChanged();
  }

  endLoop(): void {
    this.loopFrom.value = '';
    this.loopTo.value = '';
    this.loop.setAttribute('aria-pressed', 'false');
    this.heeding.loopChanged();
  }

  /** Where nothing is named it is this bar alone. */
  loopUsually(bar: string): void {
    if (this.loopFrom.value.trim() === '') this.loopFrom.value = bar;
    if (this.loopTo.value.trim() === '') this.loopTo.value = this.loopFrom.value;
  }

  /** Says at the fields whether there are such bars. */
  showLoop(isKnown: boolean): void {
    for (const field of [this.loopFrom, this.loopTo]) field.setAttribute('aria-invalid', String(!isKnown));
  }

  // ─── what is shown ───────────────────────────────────────────────────────────────────────────────────────────

  showPlaying(isPlaying: boolean): void {
    this.play.textContent = this.play.dataset[isPlaying ? 'stop' : 'play'] ?? '';
  }

  /** A text of playing by its name, with its blank filled. */
  text(name: string, word = ''): string {
    return (this.play.dataset[name] ?? '').replace('{0}', word);
  }

  /** A button for each voice; a voice that was silent stays so. */
  showVoices(voices: readonly string[]): void {
    const shown = [...this.voices.children].map(({ textContent }) => textContent);
    if (shown.join('\n') === voices.join('\n')) return;
    this.voices.replaceChildren(...voices.map((name, index) => this.voiceButton(name, index)));
  }

  private voiceButton(name: string, index: number): Element {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = name;
    const show = (): void => {
      button.setAttribute('aria-pressed', String(!this.muted.has(name)));
      this.heeding.muted(index, this.muted.has(name));
    };
    button.addEventListener('click', () => {
      if (!this.muted.delete(name)) this.muted.add(name);
      show();
    });
    show();
    return button;
  }

  /** @param reading that of the page */
  offer(reading: string, readings: readonly ChoiceOffer[], tunings: readonly TuningOffer[]): void {
    const names = readings.map(({ name }) => ({ value: name, text: name }));
    const other = readings.find(({ name }) => name !== reading)?.name ?? reading;
    fill(this.sides.a.reading, names, reading);
    fill(this.sides.b.reading, names, this.shownBeneath || this.sides.b.reading.value || other);
    const none = { value: '', text: this.beneath.dataset.none ?? '' };
    fill(this.beneath, [none, ...names], this.shownBeneath);
    for (const { tuning } of Object.values(this.sides)) {
      const own = { value: '', text: tuning.dataset.own ?? '' };
      fill(tuning, [own, ...tunings.map(({ words, title }) => ({ value: words, text: title }))], tuning.value);
    }
  }
}

const sideOf = (name: SideName): Side => ({
  button: element(`side-${name}`),
  reading: element(`reading-${name}`),
  tuning: element(`tuning-${name}`),
});

interface Choosable {
  readonly value: string;
  readonly text: string;
}

/** The choices stay as they are where they are the same: somebody may have opened them. */
function fill(select: HTMLSelectElement, choices: readonly Choosable[], chosen: string): void {
  const isSame =
    select.options.length === choices.length &&
    choices.every(({ value, text }, at) => select.options[at]?.value === value && select.options[at]?.text === text);
  if (!isSame) select.replaceChildren(...choices.map(({ value, text }) => new Option(text, value)));
  if (choices.some(({ value }) => value === chosen)) select.value = chosen;
}
