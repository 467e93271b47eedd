import '../style/base.css';
import '../style/controls.css';
import '../stations/press/pulling/press-page.css';
import './away.css';
import { render } from 'preact';
import { AwayPage } from './AwayPage.tsx';
import { createSession } from './session.ts';
import { rememberLanguage } from '../store/keep/remember-language.ts';

/** The counting page on a phone: no bench, no worker, nothing but the count. */
const askMs = 2000;

const session = createSession(
  room(),
  async (path, said) => {
    const response = await fetch(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(said) });
    return { status: response.status, heard: response.ok ? await response.json() : null };
  },
  () => new Date().toISOString(),
);

/** A browser that denies storage may throw at the first look. */
function room(): Pick<Storage, 'getItem' | 'setItem'> {
  try {
    return localStorage;
  } catch {
    return {
      getItem: () => null,
      setItem() {
        throw new Error('denied');
      },
    };
  }
}

const code = location.hash.slice(1);
// The code is spent by the first look: it does not stay in the address or its history.
history.replaceState(null, '', location.pathname);
await rememberLanguage();
render(<AwayPage session={session} />, document.getElementById('bench')!);

const meet = (): void => {
  void session.meet().finally(() => setTimeout(meet, askMs));
};
void (code === '' ? Promise.resolve() : session.enter(code)).finally(meet);
