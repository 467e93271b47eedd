#!/usr/bin/env node
import { laydown } from './laydown.ts';

process.exitCode = await laydown(process.argv.slice(2), process.env);
