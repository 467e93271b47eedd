import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** What axe finds on a page, run in an isolated world that the page's own policy does not reach. */
export async function violations(page: Page): Promise<unknown[]> {
  const cdp = await page.context().newCDPSession(page);
  const { frameTree } = await cdp.send('Page.getFrameTree');
  const { executionContextId: contextId } = await cdp.send('Page.createIsolatedWorld', { frameId: frameTree.frame.id });
  await cdp.send('Runtime.evaluate', { expression: axe.source, contextId });
  const run = await cdp.send('Runtime.evaluate', {
    expression:
      'axe.run(document).then((r) => r.violations.map((v) => ({ id: v.id, help: v.help, nodes: v.nodes.map((n) => n.html.slice(0, 200)) })))',
    contextId,
    awaitPromise: true,
    returnByValue: true,
  });
  await cdp.detach();
  if (!Array.isArray(run.result.value)) throw new Error(`axe did not run: ${JSON.stringify(run).slice(0, 300)}`);
  return run.result.value as unknown[];
}
