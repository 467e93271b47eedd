#!/usr/bin/env node
import { laydown, printPlainly } from './laydown.ts';

printPlainly();
process.exitCode = await laydown(process.argv.slice(2), process.env);
