import { enableCompileCache } from 'node:module';

// Kept from one start to the next, compiled code spares a small board some ten megabytes and a good part
// of a start. It has to be asked for before anything else is loaded, and in plain JavaScript: reading the
// types out of this very file would load what the cache spares.
enableCompileCache();
await import('./command.ts');
