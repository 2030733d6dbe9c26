import { z } from 'zod';

// The page's content policy forbids code made from strings, which zod would otherwise try for speed. Imported before
// anything that makes a schema.
z.config({ jitless: true });
