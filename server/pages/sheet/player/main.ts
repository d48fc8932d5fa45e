/**
 * The script of a teaching sheet: a press on a button sounds its music as plucked strings, another press, the next button or
 * Escape stops it. Bundled into the sheet, it fetches nothing.
 */
import { mixed } from '../../../sound/mix';
import type { SheetSounds } from '../sounds';

/** As loud as the sound files of an export: a full chord on two stops does not clip. */
const LOUDNESS = 0.5;
/** The gain of the page: strings beside somebody who speaks. */
const VOLUME = 0.7;

interface Playing {
  readonly button: HTMLButtonElement;
  readonly source: AudioBufferSourceNode;
}

const sounds = JSON.parse(document.getElementById('sounds')?.textContent ?? '{}') as SheetSounds;
const status = document.getElementById('heard');
const pace = document.querySelector<HTMLSelectElement>('#pace');
let context: AudioContext | undefined;
let playing: Playing | undefined;

for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-sound]'))
  button.addEventListener('click', () => void press(button));
document.addEventListener('keydown', ({ key }) => {
  if (key === 'Escape') stop();
});

async function press(button: HTMLButtonElement): Promise<void> {
  const again = playing?.button === button;
  stop();
  if (again) return;
  context ??= new AudioContext();
  await context.resume();
  start(button, context);
}

function start(button: HTMLButtonElement, on: AudioContext): void {
  // Somebody may have pressed another button while the browser began to sound.
  stop();
  const buffer = bufferFor(button.dataset.sound ?? '', on);
  if (buffer === undefined) return;
  const source = new AudioBufferSourceNode(on, { buffer });
  source.connect(new GainNode(on, { gain: VOLUME })).connect(on.destination);
  source.addEventListener('ended', () => {
    if (playing?.source === source) stop();
  });
  source.start();
  playing = { button, source };
  mark(button, true);
}

function bufferFor(name: string, { sampleRate }: AudioContext): AudioBuffer | undefined {
  const strokes = (sounds[name]?.[Number(pace?.value ?? 0)] ?? []).map(([frequency, at, until]) => ({
    frequency,
    at: at / 1000,
    until: until / 1000,
  }));
  const blocks = Array.from(mixed(strokes, sampleRate, LOUDNESS), (block) => block.slice());
  const length = blocks.reduce((sum, block) => sum + block.length, 0);
  if (length === 0) return undefined;
  const buffer = new AudioBuffer({ length, sampleRate });
  let at = 0;
  for (const block of blocks) {
    buffer.getChannelData(0).set(block, at);
    at += block.length;
  }
  return buffer;
}

function stop(): void {
  if (playing === undefined) return;
  const { button, source } = playing;
  playing = undefined;
  source.stop();
  mark(button, false);
}

/** Shows which music sounds, and says it to whoever does not see it. */
function mark(button: HTMLButtonElement, sounds: boolean): void {
  button.closest('figure')?.classList.toggle('sounding', sounds);
  const [verb, what] = button.querySelectorAll('span');
  if (verb !== undefined) verb.textContent = sounds ? 'Stop' : 'Play';
  if (status !== null) status.textContent = sounds ? `Playing${what?.textContent ?? ''}` : '';
}
