// A document small enough to draw in without a browser, which takes what a
// browser takes: text where text is wanted, or it throws as a browser would.

class Part {
  parentNode = null;
  firstChild = null;
  lastChild = null;
  nextSibling = null;
  previousSibling = null;
  get childNodes() {
    const all = [];
    for (let node = this.firstChild; node; node = node.nextSibling) all.push(node);
    return all;
  }
  insertBefore(node, before) {
    node.parentNode?.removeChild(node);
    if (before && before.parentNode !== this) throw new Error('not a child');
    const after = before ? before.previousSibling : this.lastChild;
    node.parentNode = this;
    node.previousSibling = after;
    node.nextSibling = before;
    if (after) after.nextSibling = node; else this.firstChild = node;
    if (before) before.previousSibling = node; else this.lastChild = node;
    return node;
  }
  removeChild(node) {
    if (node.parentNode !== this) throw new Error('not a child');
    const {previousSibling: before, nextSibling: after} = node;
    if (before) before.nextSibling = after; else this.firstChild = after;
    if (after) after.previousSibling = before; else this.lastChild = before;
    node.parentNode = node.previousSibling = node.nextSibling = null;
    return node;
  }
  replaceChildren() { for (const node of [...this.childNodes]) this.removeChild(node); }
  append(node) { this.insertBefore(node, null); }
  remove() { this.parentNode?.removeChild(this); }
  addEventListener() {}
  removeEventListener() {}
  querySelector() { return null; }
  querySelectorAll() { return []; }
  matches() { return false; }
  focus() {}
  /** All elements below this, itself first. @returns {any[]} */
  all() {
    const found = [];
    const walk = node => {
      found.push(node);
      for (let child = node.firstChild; child; child = child.nextSibling) walk(child);
    };
    walk(this);
    return found;
  }
  get textContent() { return this.childNodes.map(child => child.textContent).join(''); }
}

class Text extends Part {
  nodeType = 3;
  #data = '';
  constructor(data) {
    super();
    this.data = data;
  }
  get data() { return this.#data; }
  set data(data) { this.#data = `${data}`; }
  get textContent() { return this.#data; }
}

class Element extends Part {
  nodeType = 1;
  /** @type {{name: string, value: string}[]} */
  attributes = [];
  dataset = {};
  constructor(namespaceURI, localName) {
    super();
    this.namespaceURI = namespaceURI;
    this.localName = localName;
  }
  setAttribute(name, value) {
    const text = `${value}`;
    if (!/^[^\s"'>/=]+$/.test(name)) throw new Error(`no name of an attribute: ${name}`);
    this.removeAttribute(name);
    this.attributes.push({name, value: text});
  }
  removeAttribute(name) { this.attributes = this.attributes.filter(a => a.name !== name); }
  getAttribute(name) { return this.attributes.find(a => a.name === name)?.value ?? null; }
  set innerHTML(_) { throw new Error('innerHTML'); }
  showModal() {}
  close() {}
}

/** What elements have as text besides attributes. */
for (const name of ['value', 'id', 'className', 'title', 'type']) {
  Object.defineProperty(Element.prototype, name, {
    get() { return this.getAttribute(name) ?? ''; },
    set(value) { this.setAttribute(name, value); },
  });
}

const root = () => new Element('http://www.w3.org/1999/xhtml', 'html');

/** Puts such a document where modules look for one. */
export function putDocument() {
  const documentElement = root();
  Object.assign(globalThis, {
    document: {
      documentElement, body: root(), visibilityState: 'visible',
      createElementNS: (space, name) => new Element(space, name),
      createElement: name => new Element('http://www.w3.org/1999/xhtml', name),
      createTextNode: data => new Text(data),
      getElementById: () => null,
      querySelectorAll: () => [],
      addEventListener() {},
    },
    requestAnimationFrame: () => 0,
  });
  return root;
}
