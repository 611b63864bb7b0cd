import { render } from 'preact';
import './style/base.css';
import './style/bench.css';
import './style/picture.css';
import './style/filling.css';
import './style/panels.css';
import './style/by-hand.css';
import './style/drawings.css';
import './style/conflict.css';
import './style/trials.css';
import './style/first-look.css';
import { effect } from '@preact/signals';
import { lightNow, systemLight } from '../state/view.ts';
import { App } from './app.tsx';
import { openFromServer } from './server-plan.ts';

effect(() => {
  document.documentElement.dataset.light = lightNow.value;
});
const dark = matchMedia('(prefers-color-scheme: dark)');
const follow = () => {
  systemLight.value = dark.matches ? 'dark' : 'light';
};
dark.addEventListener('change', follow);
follow();

const place = document.getElementById('page');
if (place) render(<App />, place);
void openFromServer();
