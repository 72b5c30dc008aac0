#!/usr/bin/env bash
# A page for a second opinion in a real browser (Debian's chromium, headless): it fits a telephone and a desk, needs no
# network, draws its picture, and the answer typed into it comes back into the book. Skipped (77) without chromium.
set -euo pipefail
program=$1
browser=$(command -v chromium || command -v chromium-browser || true)
[ -n "$browser" ] || { echo "no chromium: skipped"; exit 77; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
book=$work/share.hammerline
export LC_ALL=C.UTF-8 QT_QPA_PLATFORM=offscreen
"$program" demo "$book" > "$work/log"
"$program" window "$book" --station measure --picture "$work/any.png" >> "$work/log"
"$program" photo "$book" "$work/any.png" --finding "40 hammer-shank" --caption 'A <b>mark</b> & "more"' >> "$work/log"
"$program" remark "$book" "glued before" --note 40 --part hammer-shank >> "$work/log"
"$program" share "$book" --question "File again, or new hammers?" --out "$work/page.html" >> "$work/log"
! grep -Eq 'https?://' "$work/page.html" || { echo "the page names an address"; exit 1; }

# The page in a frame of that width; what it says of itself, and the answer it would save, as text of the outer page.
cat > "$work/outer.html" << 'PAGE'
<!DOCTYPE html><html><body><iframe id="f" style="border:0"></iframe><pre id="out">waiting</pre><script>
var f=document.getElementById('f'),out=document.getElementById('out');
f.style.width=location.hash.slice(1)+'px';f.style.height='3000px';
f.onload=function(){var w=f.contentWindow,d=f.contentDocument,saved='';
 w.URL.createObjectURL=function(b){saved=b;return '#';};
 d.querySelectorAll('img').forEach(function(i){i.loading='eager';});
 d.querySelector('textarea').value='not enough,\nfile again';
 d.querySelector('input[name=who]').value='Berta K.';
 setTimeout(function(){d.getElementById('save').click();
  new Response(saved).text().then(function(t){
   out.textContent='scroll='+d.documentElement.scrollWidth+' client='+d.documentElement.clientWidth+
    ' pictures='+Array.from(d.images).filter(function(i){return i.naturalWidth>0;}).length+'/'+d.images.length+
    ' drawings='+d.querySelectorAll('svg').length+' small='+Array.from(d.querySelectorAll('button,textarea,input'))
     .filter(function(e){return e.offsetParent&&e.offsetHeight<36;}).length+'\nANSWER\n'+t;});},400);};
f.src='page.html';
</script></body></html>
PAGE
for width in 390 1280; do
  timeout 120 "$browser" --headless --no-sandbox --disable-gpu --disable-dev-shm-usage --disable-web-security \
    --allow-file-access-from-files --user-data-dir="$work/profile" --virtual-time-budget=5000 --dump-dom \
    "file://$work/outer.html#$width" > "$work/dom-$width.html" 2> "$work/browser.log" || { tail -5 "$work/browser.log"; exit 1; }
  grep -o 'scroll=[^<]*' "$work/dom-$width.html" | head -1 | tee "$work/line"
  grep -Eq "scroll=([0-9]+) client=\\1 pictures=1/1" "$work/line" || { echo "the page does not fit $width points, or its picture does not show"; exit 1; }
  grep -q " small=0" "$work/line" || { echo "something to press is smaller than a finger at $width"; exit 1; }
done
grep -q 'drawings=0' "$work/line" && { echo "no reading is drawn"; exit 1; }
python3 - "$work/dom-390.html" "$work/answer.txt" << 'PY'
import html, re, sys
text = html.unescape(re.search(r'ANSWER\n(.*?)</pre>', open(sys.argv[1], encoding='utf-8').read(), re.S).group(1))
open(sys.argv[2], 'w', encoding='utf-8').write(text)
PY
"$program" advice "$book" "$work/answer.txt" --json | grep -q '"added": 1'
"$program" advice "$book" "$work/answer.txt" --json | grep -q '"added": 0'
"$program" remark "$book" --json | grep -q '"who": "Berta K."'
"$program" verify "$book" >> "$work/log"
echo "the page fits, and its answer came back"
