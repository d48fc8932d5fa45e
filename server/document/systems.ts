/** Scores of a document's systems, kept from version to version and shared by the choices that agree in them. */
import { areSame, keeping } from '../../grammar/keeping';
import type { BlockContents, FileTree } from '../../grammar/tree';
import type { Carry } from '../score/carry';
import type { Choice } from '../score/choice';
import { type SystemEnvironment, seenBySystems } from '../score/environment';
import type { SystemScores } from '../score/piece';
import type { SystemScore } from '../score/score';
import { buildSystem } from '../score/system';
import type { SystemTask } from '../score/system/task';
import { canonical, canonicalPlain, type Generation, isStale, Kept } from './kept';
import { type Answer, LocalChoices } from './localChoice';

/** A score with what it was built from, besides contents and carry. */
interface Built {
  readonly environment: SystemEnvironment;
  readonly accidentals: Choice['accidentals'];
  /** What the choice comes to in this system. */
  readonly local: Answer;
  readonly score: SystemScore;
  used: number;
}

/** What a choice comes to in a system of the last version. */
interface Answered {
  readonly contents: BlockContents;
  readonly answer: Answer;
}

/** A system as the last version of a choice met it. */
interface Walked {
  readonly contents: BlockContents;
  readonly carry: Carry;
  readonly built: Built;
}

/** The systems that a version of a choice met, in their order. */
interface Walk {
  readonly environments: readonly SystemEnvironment[];
  readonly systems: Walked[];
}

/** All that is known of systems with these contents. */
interface Known {
  readonly local: LocalChoices;
  readonly hasWitnessLanes: boolean;
  readonly byCarry: Map<Carry, Built[]>;
}

type Voices = SystemScore['voices'];

/** The events of the two systems last built or asked for: of one that is looked at and of the one before it. */
class LastEvents {
  private readonly last: { readonly task: SystemTask; readonly voices: Voices }[] = [];

  of(task: SystemTask): Voices | undefined {
    return this.last.find((one) => one.task === task)?.voices;
  }

  keep(task: SystemTask, voices: Voices): void {
    this.last.push({ task, voices });
    if (this.last.length > 2) this.last.shift();
  }
}

/**
 * A score with its events held loosely. Events were three quarters of the memory of an open document (measured: 150 of 190
 * bytes a character with three choices), and few ask for them: checks look at a system as soon as it is built, exports and
 * features at what they tell of. So they are let go at once, while they are young and cost the collector nothing, and built
 * again when they are asked for, the same since they depend on nothing but the task; then they stay until the collector
 * wants their room.
 *
 * All share one `get`: an object written out with a `get` of its own has a shape of its own, and whoever looks at scores
 * would be slow.
 */
class LooseScore implements SystemScore {
  declare readonly kind: SystemScore['kind'];
  declare readonly bars: SystemScore['bars'];
  declare readonly duration: SystemScore['duration'];
  declare readonly voices: Voices;
  declare readonly curves: SystemScore['curves'];
  declare readonly changes: SystemScore['changes'];
  declare readonly sections: SystemScore['sections'];
  declare readonly carryOut: Carry;
  declare readonly problems: SystemScore['problems'];
  readonly #task: SystemTask;
  readonly #last: LastEvents;
  #held: WeakRef<Voices> | undefined;

  constructor(built: SystemScore, carryOut: Carry, task: SystemTask, last: LastEvents) {
    this.#task = task;
    this.#last = last;
    this.kind = built.kind;
    this.bars = built.bars;
    this.duration = built.duration;
    Object.defineProperty(this, 'voices', ASKED_FOR);
    this.curves = built.curves;
    this.changes = built.changes;
    this.sections = built.sections;
    this.carryOut = carryOut;
    this.problems = built.problems;
    last.keep(task, built.voices);
  }

  /** Its events: those at hand, or built again. */
  static asked(score: LooseScore): Voices {
    const known = score.#last.of(score.#task) ?? score.#held?.deref();
    if (known !== undefined) return known;
    const { voices } = buildSystem(score.#task);
    score.#held = new WeakRef(voices);
    score.#last.keep(score.#task, voices);
    return voices;
  }
}

const ASKED_FOR: PropertyDescriptor = {
  enumerable: true,
  get(this: LooseScore): Voices {
    return LooseScore.asked(this);
  },
};

/** Equal carries are one object, so that they are told apart by identity. */
class Carries {
  private readonly byText = new Map<string, Carry>();
  private readonly own = new WeakSet<Carry>();

  one(carry: Carry): Carry {
    if (this.own.has(carry)) return carry;
    const text = canonicalPlain(carry);
    const known = this.byText.get(text);
    if (known !== undefined) return known;
    this.byText.set(text, carry);
    this.own.add(carry);
    return carry;
  }

  get size(): number {
    return this.byText.size;
  }

  keepOnly(alive: ReadonlySet<Carry>): void {
    for (const [text, carry] of this.byText) {
      if (alive.has(carry)) continue;
      this.byText.delete(text);
      this.own.delete(carry);
    }
  }
}

/** What systems see of an environment, with its canonical text. */
interface EnvironmentView {
  readonly environment: SystemEnvironment;
  readonly text: string;
}

const viewOf = (environment: SystemEnvironment): EnvironmentView => ({ environment, text: canonical(environment) });

const viewsOf = keeping((environment: SystemEnvironment) => ({
  whole: viewOf(seenBySystems(environment)),
  // Who adds a source changes nothing where no witness has a lane.
  withoutSources: viewOf(seenBySystems(environment, [])),
}));

export class Systems {
  /** Systems that were built since this was last set to zero. */
  built = 0;
  private readonly known = new WeakMap<BlockContents, Known>();
  private readonly carries = new Carries();
  private readonly environments: Kept<string, SystemEnvironment>;
  private readonly lastEvents = new LastEvents();
  private readonly walks = new WeakMap<Choice, Walk>();
  private readonly answers = new WeakMap<Choice, readonly Answered[]>();

  constructor(private readonly generation: Generation) {
    this.environments = new Kept(generation);
  }

  /** What a choice comes to in the whole of a file: equal texts, equal scores. */
  taken({ blocks }: FileTree, choice: Choice): string {
    const before = this.answers.get(choice) ?? [];
    const answers: Answered[] = [];
    for (const { kind, contents } of blocks) {
      if (kind !== 'system') continue;
      const last = before[answers.length];
      answers.push(last?.contents === contents ? last : { contents, answer: this.knownOf(contents).local.of(choice) });
    }
    this.answers.set(choice, answers);
    return `${canonical([choice.accidentals, choice.order])} ${answers.map(({ answer }) => answer.number).join(' ')}`;
  }

  /**
   * The score of each system under a choice, built if it is not known.
   * @param loose whether the events of those built may be collected, to be built again when they are asked for
   */
  scores(environment: SystemEnvironment, choice: Choice, loose: boolean): SystemScores {
    const views = viewsOf(environment);
    const [seen, withoutSources] = [this.one(views.whole), this.one(views.withoutSources)];
    const environments = [seen, withoutSources];
    const before = this.walkBefore(choice, environments);
    const systems: Walked[] = [];
    this.walks.set(choice, { environments, systems });
    return (contents, met) => {
      const last = before[systems.length];
      // Most systems stand where they stood: to know that takes no look-up.
      const isSame = last !== undefined && last.contents === contents && last.carry === met;
      const carry = isSame ? met : this.carries.one(met);
      const built = isSame ? last.built : this.builtOf(contents, seen, withoutSources, choice, carry, loose);
      built.used = this.generation.now;
      systems.push(isSame ? last : { contents, carry, built });
      return built.score;
    };
  }

  /** What the last version of a choice met, as long as what its systems see is the same. */
  private walkBefore(choice: Choice, environments: readonly SystemEnvironment[]): readonly Walked[] {
    const walk = this.walks.get(choice);
    return walk !== undefined && areSame(walk.environments, environments) ? walk.systems : [];
  }

  private builtOf(
    contents: BlockContents,
    seen: SystemEnvironment,
    withoutSources: SystemEnvironment,
    choice: Choice,
    carry: Carry,
    loose: boolean,
  ): Built {
    const { accidentals } = choice;
    const { local, byCarry, hasWitnessLanes } = this.knownOf(contents);
    const environment = hasWitnessLanes ? seen : withoutSources;
    const answer = local.of(choice);
    const all = byCarry.get(carry) ?? [];
    const known = all.find(
      (one) => one.environment === environment && one.accidentals === accidentals && one.local === answer,
    );
    if (known !== undefined) return known;
    const task = { block: contents, environment, choice, carry };
    const whole = buildSystem(task);
    this.built++;
    const carryOut = this.carries.one(whole.carryOut);
    const score = loose ? new LooseScore(whole, carryOut, task, this.lastEvents) : { ...whole, carryOut };
    const built = { environment, accidentals, local: answer, score, used: 0 };
    all.push(built);
    byCarry.set(carry, all);
    return built;
  }

  private knownOf(contents: BlockContents): Known {
    const known = this.known.get(contents);
    if (known !== undefined) return known;
    const hasWitnessLanes = contents.lanes.some(({ witness }) => witness !== undefined);
    const fresh: Known = { local: new LocalChoices(contents), hasWitnessLanes, byCarry: new Map() };
    this.known.set(contents, fresh);
    return fresh;
  }

  private one({ text, environment }: EnvironmentView): SystemEnvironment {
    return this.environments.get(text) ?? this.environments.set(text, environment);
  }

  /** Drops scores long unused. @param contents those of all systems that are kept */
  sweep(contents: Iterable<BlockContents>): void {
    this.environments.sweep();
    const alive = new Set<Carry>();
    for (const { byCarry } of this.knownAmong(contents)) {
      for (const [carry, all] of byCarry) {
        const fresh = all.filter(({ used }) => !isStale(used, this.generation));
        if (fresh.length === 0) byCarry.delete(carry);
        else {
          if (fresh.length < all.length) byCarry.set(carry, fresh);
          alive.add(carry);
          for (const { score } of fresh) alive.add(score.carryOut);
        }
      }
    }
    this.carries.keepOnly(alive);
  }

  private *knownAmong(contents: Iterable<BlockContents>): Generator<Known> {
    for (const one of contents) {
      const known = this.known.get(one);
      if (known !== undefined) yield known;
    }
  }

  sizes(contents: Iterable<BlockContents>): { readonly scores: number; readonly carries: number } {
    let scores = 0;
    for (const { byCarry } of this.knownAmong(contents)) for (const all of byCarry.values()) scores += all.length;
    return { scores, carries: this.carries.size };
  }
}
