/** What is glued to a thing of a lane: marks with the shapes that they stand for, annotations, accidentals of signs. */
import { replacing } from '../../../grammar/findings/fixes';
import type { Annotation, Mark, MarkForm, Span, Suffix } from '../../../grammar/tree';
import { type Choice, holdsIn } from '../choice';
import { LaneMark, noAnnotations, noMarks } from '../event';
import type { AppliedAnnotation, AppliedMark } from '../score';
import { shapesOfSign } from '../signs';
import type { LaneBars } from './laneBars';
import type { LaneTask } from './task';

/** Marks and annotations that something bears. */
export interface Applied {
  readonly marks: readonly AppliedMark[];
  readonly annotations: readonly AppliedAnnotation[];
}

/** Of what is glued to something that which a choice has: with a mark that does not hold goes what speaks of the mark. */
export function heldSuffixes(suffixes: readonly Suffix[], choice: Choice): readonly Suffix[] {
  let gone: MarkForm['type'] | undefined;
  return suffixes.filter((suffix) => {
    if (suffix.kind === 'annotation') return gone === undefined;
    const { type, readings } = suffix.form;
    // An accidental speaks of the sign before it.
    if (gone === 'sign' && type === 'accidental') return false;
    gone = holdsIn(readings, choice) ? undefined : type;
    return gone === undefined;
  });
}

/** A part of an event where it stands in the lane. */
export const moved = <Part extends Span>(part: Part, by: number): Part => ({ ...part, pos: part.pos + by });

const nothingApplied: Applied = { marks: noMarks, annotations: noAnnotations };
const noShapes: readonly string[] = [];

/** Reads the suffixes of one lane. */
export class SuffixReader {
  constructor(
    private readonly task: LaneTask,
    private readonly bars: LaneBars,
  ) {}

  /** @param at where places of the suffixes count from */
  applied(suffixes: readonly Suffix[], at = 0): Applied {
    // Most things bear nothing, and share that.
    if (suffixes.length === 0) return nothingApplied;
    const only = suffixes[0];
    if (suffixes.length === 1 && only?.kind === 'mark' && only.form.readings === undefined) {
      return { marks: [this.mark(only, at)], annotations: noAnnotations };
    }
    const marks: LaneMark[] = [];
    const annotations: AppliedAnnotation[] = [];
    for (const suffix of heldSuffixes(suffixes, this.task.choice)) {
      if (suffix.kind === 'annotation') this.annotate(moved(suffix, at), marks, annotations);
      else takeMark(this.mark(suffix, at), marks);
    }
    return {
      marks: marks.length === 0 ? noMarks : marks.slice(),
      annotations: annotations.length === 0 ? noAnnotations : annotations.slice(),
    };
  }

  private annotate(annotation: Annotation, marks: readonly LaneMark[], annotations: AppliedAnnotation[]): void {
    const applied = { annotation, source: this.bars.source(annotation) };
    // Glued after a mark it speaks of that mark, after the note of the note.
    const last = marks.at(-1);
    if (last === undefined) annotations.push(applied);
    else last.annotations = [...last.annotations, applied];
  }

  private mark({ form, pos, len }: Mark, at: number): LaneMark {
    const shapes = form.type === 'sign' ? this.shapesOf(form, at + pos, len) : noShapes;
    return new LaneMark(this.bars.lane, at + pos, len, form, shapes);
  }

  private shapesOf(form: MarkForm, at: number, length: number): readonly string[] {
    const { shapes, problem } = shapesOfSign(form.name, this.task.environment);
    if (problem !== undefined) {
      const pos = at + form.text.indexOf(form.name);
      const len = form.name.length;
      this.bars.report(
        problem.code,
        { pos: at, len: length },
        {
          name: form.name,
          nearest: problem.meant.length === 0 ? '' : `; nearest: ${problem.meant.join(' or ')}`,
          tables: problem.tables,
          unsaid: problem.unsaid,
        },
        problem.meant.map((text) => replacing({ pos, len }, text)),
      );
    }
    return shapes;
  }
}

function takeMark(mark: LaneMark, marks: LaneMark[]): void {
  const last = marks.at(-1);
  // An accidental directly after a sign belongs to the sign.
  if (mark.form.type === 'accidental' && last?.form.type === 'sign') last.accidentals = [...last.accidentals, mark];
  else marks.push(mark);
}
