// What a worker finds that the browser does not give it: Go's loader, and what
// the build puts into sw.js.

declare var Go: new () => {
  importObject: WebAssembly.Imports;
  env: Record<string, string>;
  run(instance: WebAssembly.Instance): Promise<void>;
};

/** Every file of this version, with its hash. */
declare const BARROW_FILES: Record<string, string>;

/** Another when one of them is. */
declare const BARROW_VERSION: string;

// A service worker's own, besides what every worker has.
declare const registration: ServiceWorkerRegistration;
declare const clients: Clients;
declare function skipWaiting(): Promise<void>;
declare function addEventListener(type: 'install' | 'activate', listener: (event: ExtendableEvent) => void): void;
declare function addEventListener(type: 'message', listener: (event: ExtendableMessageEvent) => void): void;
declare function addEventListener(type: 'fetch', listener: (event: FetchEvent) => void): void;
