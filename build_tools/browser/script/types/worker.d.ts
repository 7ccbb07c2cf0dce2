// What stands before the service worker's script: the edition that it keeps, and the page for what a device has not.

interface Edition {
  id: string;
  date: string;
  bytes: number;
}

declare const EDITION: Edition & { files: [path: string, bytes: number, digest: string][] };
declare const ABSENT: string;

/** The scope of a service worker; the library of workers has its members on the global scope of any worker. */
declare const registration: ServiceWorkerRegistration;
declare const clients: Clients;
declare function skipWaiting(): Promise<void>;

interface DedicatedWorkerGlobalScopeEventMap {
  activate: ExtendableEvent;
  fetch: FetchEvent;
  install: ExtendableEvent;
}
