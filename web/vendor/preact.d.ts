// What the page uses of Preact, as types.

export type Key = string | number;

export interface VNode {
  type: unknown;
  props: object;
  key: Key | null;
}

/** What may stand inside an element. */
export type Child = VNode | string | number | boolean | null | undefined | Child[];

export class Component<Props = {}, Own = {}> {
  constructor(props: Props);
  props: Props;
  /** The component's own. */
  state: Own;
  /** The element that it drew. */
  base?: HTMLElement;
  setState(next: Partial<Own>): void;
  forceUpdate(): void;
  render(props: Props, own: Own): Child;
  shouldComponentUpdate?(next: Props, own: Own): boolean;
  componentDidMount?(): void;
  componentDidUpdate?(): void;
  componentWillUnmount?(): void;
  componentDidCatch?(error: unknown): void;
}

type Drawer<Props> = (new (props: Props) => Component<Props, object>) | ((props: Props) => Child);

type On<Event, Element> = Event & {readonly currentTarget: Element};

interface Attributes<Element> {
  key?: Key;
  ref?: (element: Element | null) => void;
  onClick?: (event: On<MouseEvent, Element>) => void;
  onInput?: (event: On<InputEvent, Element>) => void;
  onbeforeinput?: (event: On<InputEvent, Element>) => void;
  onChange?: (event: On<Event, Element>) => void;
  onBlur?: (event: On<FocusEvent, Element>) => void;
  onFocus?: (event: On<FocusEvent, Element>) => void;
  onKeyDown?: (event: On<KeyboardEvent, Element>) => void;
  onSubmit?: (event: On<SubmitEvent, Element>) => void;
  onClose?: (event: On<Event, Element>) => void;
  [name: string]: unknown;
}

export function h<Name extends keyof HTMLElementTagNameMap>(type: Name, attributes?: Attributes<HTMLElementTagNameMap[Name]> | null, ...children: Child[]): VNode;
export function h(type: string, attributes?: Attributes<SVGElement> | null, ...children: Child[]): VNode;
export function h<Props>(type: Drawer<Props>, props: NoInfer<Props> & {key?: Key}): VNode;

export function render(child: Child, parent: Element): void;
