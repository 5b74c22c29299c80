import { enableCompileCache } from 'node:module';

// Kept from one start to the next, compiled code spares a small board some ten megabytes and a good part
// of a start; so it has to be asked for before anything else is imported.
enableCompileCache();
await import('./command.ts');
