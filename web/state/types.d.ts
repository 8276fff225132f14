// What the page knows and shows, as types.

import type {Changes, FullPlan, Plan, Problem} from '../plan.d.ts';
import type {Doc, Saved} from '../store/record.js';
import type {Store} from '../store/jobs.js';
import type {JobDocument} from './document.js';

export type Place = 'job' | 'yard' | 'ground';

export interface State {
  /** The job document in hand. */
  job: JobDocument;
  /** The last good plan. */
  plan: Plan | null;
  /** The same as text, to be saved. */
  planText: string;
  /** The document that the plan is of; 'saved' for one kept from before. */
  planFor: Doc | 'saved' | null;
  /** Whether the plan is of an older entry. */
  stale: boolean;
  /** The plan with what takes longer. */
  full: FullPlan | null;
  /** What full was worked out of. */
  fullFor: Doc | null;
  drawings: Drawing[] | null;
  /** Drawings of cost against volume. */
  costs: Drawing[] | null;
  /** What the yard changed. */
  changes: Changes | null;
  /** The document that all of these are of. */
  restFor: Doc | null;
  /** By path. */
  problems: Map<string, Problem>;
  /** The document that the problems are of. */
  problemsFor: Doc | null;
  /** What there is to choose from. */
  catalog: Catalog | null;

  /** The jobs kept on this device. */
  store: Store;
  /** What is kept there of the job in hand; null with no job open. */
  record: Saved | null;
  /** The document as it left home; null before anything changed at the yard. */
  home: Doc | null;
  /** How many of each offer are ticked. */
  ticks: Record<string, number>;
  /** Another tab saved this job too: the ways to choose from. */
  conflict: {theirs(): void; mine(): void} | null;
  /** What can be brought back. */
  deleted: {token: string; name: string} | null;
  /** Why the job is not saved. */
  keptText: string;

  place: Place;
  /** Paths whose problems may be shown. */
  touched: Set<string>;
  /** What is folded out, by name. */
  open: Set<string>;
  /** Whether the jobs dialog is open. */
  jobsOpen: boolean;
  /** The sheet that is being printed. */
  printing: Sheet | null;
  /** The job as a link. */
  shared: Shared | null;
  message: Message | null;
  /** What takes long: the program is loading, or working; '' for nothing. */
  long: '' | 'loading' | 'working';
  /** What the live region says. */
  announcement: string;
  language: string;
  /** Whether this reader writes 1,5. */
  comma: boolean;
  /** '' for as the device is. */
  theme: string;
  /** What the page says of working offline. */
  offlineText?: () => string;
  /** A newer version of the page is at hand. */
  updateReady: boolean;
  useUpdate(): void;

  actions: Actions;
  /** Draws the page again, soon. */
  redraw(): void;
  /** Works the job out again, if it is not. */
  recompute(): Promise<void>;
  /** Told of the document that a key is about to make. */
  expect(doc: Doc): void;
  /** Told of a change that is not of the document. */
  ticked?(): void;
}

/** A state that has a plan: see hasPlan. */
export type Planned = State & {plan: Plan};

/** What a person can do with whole jobs, and with the page. */
export interface Actions {
  take(record: Saved): void;
  saveSoon(): void;
  save(whole?: boolean): void;
  startEmpty(): void;
  startSample(): Promise<void>;
  openFile(): void;
  takeFile(file: File): Promise<void>;
  open(id: string): void;
  copy(): void;
  remove(id: string): void;
  undelete(): void;
  heard(change: {id: string; record: Saved | null}): void;
  takeLink(fragment: string): Promise<void>;
  share(): Promise<void>;
  copyLink(): Promise<void>;
  exportJob(): void;
  exportCSV(): Promise<void>;
  /** Ends the question under way. */
  stop(): void;
  askAgain(): Promise<void>;
  print(which: Sheet): void;
  setLanguage(language: string): Promise<void>;
  setDecimal(mark: string): Promise<void>;
  setTheme(theme: string): void;
}

export type Sheet = 'yard' | 'ground';

export interface Message {
  text: string;
  /** Offers to take the last change back; what is to be put back besides the job, if anything. */
  undo?: true | (() => void);
  bad?: boolean;
  /** Offers to ask again for what had no answer. */
  again?: true;
}

export interface Shared {
  link: string;
  /** A QR code: its side in modules, and the path of the dark ones. */
  code: {size: number; path: string} | null;
  /** Why there is no code. */
  why: string;
  copied?: boolean;
}

/** A drawing of the plan: shapes with their places worked out. */
export interface Drawing {
  kind: string;
  /** The task that it is of, if it is of one. */
  task?: number;
  title: string;
  desc: string;
  width: number;
  height: number;
  shapes: Shape[];
}

/** An element of SVG, its attributes by name. */
export interface Shape {
  is: string;
  class: string;
  text?: string;
  [attribute: string]: string | number | undefined;
}

/** What a job may name without describing it. */
export interface Catalog {
  materials: CatalogMaterial[];
  containers: CatalogContainer[];
  mixes: CatalogMix[];
  soils: {id: string; name: string}[];
}

interface Sourced {
  id: string;
  /** The heading that lists put it under, in the reader's words. */
  kind?: string;
  name?: string;
  source?: string;
  confidence?: string;
}

export interface CatalogMaterial extends Sourced {
  grade?: string;
  us?: string;
  metric?: string;
  packs?: string[];
  bales?: string[];
  bulk?: true;
}

export interface CatalogContainer extends Sourced {
  us?: string;
  metric?: string;
}

export interface CatalogMix extends Sourced {
  parts?: string;
}
