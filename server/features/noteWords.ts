/** A note in words: what sounds, what is written, and where it stands. */
import { bothNames } from '../score/pitchNames';
import { type EventHere, secondsOfPiece } from './events';
import { clock, placeInWords, valueInWords } from './words';

/** Markdown. */
export function soundInWords({ event }: EventHere, member: NonNullable<EventHere['member']>): string {
  const { spelling, octave, alteration, tiedFrom } = member;
  const sounding = `**${bothNames({ letter: spelling.letter, alteration, octave })}**`;
  const chord = event.members.length < 2 ? '' : `, of ${event.members.length} struck together`;
  const written = `written \`${spelling.text}\`${spelling.octave === undefined ? ` in octave ${octave}` : ''}`;
  return `${sounding}${chord}; ${written}${tiedFrom ? ', tied to the note before' : ''}`;
}

export function whereInWords(at: EventHere): string {
  const { event, bar, inBar, score, onset } = at;
  const value = event.value === undefined ? [] : [valueInWords(event.value)];
  const small = event.small === undefined ? [] : ['small'];
  const reading = score.choice.name === 'written' ? [] : [`in ${score.choice.name}`];
  return [
    ...small,
    ...value,
    event.laneName,
    placeInWords(bar, inBar),
    clock(secondsOfPiece(at).at(onset)),
    ...reading,
  ].join(' · ');
}

/** Both in one sentence without Markdown, for whoever hears it. */
export function spoken(at: EventHere): string {
  const sound = at.member === undefined ? [] : [soundInWords(at, at.member).replace(/[*`]/g, '')];
  return [...sound, whereInWords(at)].join(' · ');
}
