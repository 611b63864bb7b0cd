import { render } from 'preact';
import './style/page.css';
import './style/panels.css';
import './style/by-hand.css';
import './style/drawings.css';
import { effect } from '@preact/signals';
import { light } from '../state/view.ts';
import { App } from './app.tsx';
import { openFromServer } from './server-plan.ts';

effect(() => {
  const root = document.documentElement;
  if (light.value === 'as the system') delete root.dataset.light;
  else root.dataset.light = light.value;
});

const place = document.getElementById('page');
if (place) render(<App />, place);
void openFromServer();
