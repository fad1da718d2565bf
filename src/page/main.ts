import { DRAWING_CSS } from '../draw/drawing-style.ts';
import './styles/ground.css';
import './styles/table.css';
import './styles/progress.css';
import './styles/parts.css';
import './styles/forms.css';
import './styles/bench.css';
import './styles/prints.css';
import './styles/trace.css';
import './styles/svg-import.css';
import './styles/sewing.css';
import './styles/slip.css';
import './styles/answers.css';
import './styles/print.css';
import './yw-app.ts';

const sheet = new CSSStyleSheet();
sheet.replaceSync(DRAWING_CSS);
document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
