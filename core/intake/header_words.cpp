// English: situation 73 (lists of technicians); the rest and the other languages: common practice, no source.
#include "core/intake/header_words.h"

namespace hammerline {
namespace {

using Use = ColumnUse::Use;
using namespace dimension;

constexpr std::array kWords = {
    // the note
    HeaderWords{
        Use::note,
        {},
        "|note|name|key|key no|key number|note no|note number|note name|key "
        "name|number|no|nr|n|#|pitch|taste|tastennummer|tasten nr|ton|tonname|tonnummer|nummer|touche|numero|no de "
        "touche|numero de touche|nota|tecla|tasto|numero tasto|toets|toetsnummer|toon|noot|"},
    // English
    HeaderWords{Use::dimension, keyHeight,
                "|key height|height|key level|level|keyheight|natural height|height of keys|"},
    HeaderWords{Use::dimension, sharpHeight, "|sharp height|height of sharps|sharps height|"},
    HeaderWords{Use::dimension, keyDip, "|dip|key dip|keydip|touch depth|depth of touch|key depth|depth|touch|"},
    HeaderWords{Use::dimension, lostMotion, "|lost motion|lostmotion|lm|free play|"},
    HeaderWords{Use::dimension, blow,
                "|blow|blow distance|hammer blow|hammer travel|hammer stroke|hammer distance|full blow|"},
    HeaderWords{Use::ambiguous, blow, "|strike distance|striking distance|strike|travel|strike point|"},
    HeaderWords{Use::dimension, letOff, "|let off|letoff|lo|set off|setoff|escapement|escape|let off distance|"},
    HeaderWords{Use::dimension, dimension::drop, "|drop|hammer drop|"},
    HeaderWords{Use::dimension, aftertouch, "|aftertouch|after touch|at|"},
    HeaderWords{Use::dimension, checking,
                "|checking|check|checking distance|check distance|backcheck|back check|backcheck distance|back "
                "checking|catch|catching|hammer check|"},
    HeaderWords{Use::dimension, damperStart,
                "|damper start|damper lift|damper timing|damper lift timing|spoon|spoons|spoon timing|"},
    HeaderWords{Use::dimension, damperRise, "|damper rise|damper lift by pedal|pedal lift|"},
    HeaderWords{Use::ambiguous, damperStart, "|damper|dampers|"},
    HeaderWords{Use::dimension, halfBlow, "|half blow|halfblow|"},
    HeaderWords{Use::dimension, strap, "|strap|bridle strap|bridle|"},
    HeaderWords{Use::dimension, playerClearance, "|player clearance|finger clearance|striker clearance|"},
    HeaderWords{Use::dimension, capstanReserve, "|capstan reserve|capstan thread|"},
    HeaderWords{Use::dimension, downWeight, "|down weight|downweight|dw|"},
    HeaderWords{Use::dimension, upWeight, "|up weight|upweight|uw|"},
    HeaderWords{Use::ambiguous, downWeight, "|weight|touch weight|touchweight|"},
    HeaderWords{Use::dimension, sharpProud, "|sharp proud|proud|sharp down|"},
    HeaderWords{Use::dimension, feltLeft, "|felt left|hammer felt|"},
    HeaderWords{Use::ambiguous, playerClearance, "|clearance|"},
    HeaderWords{Use::dimension, jackReturn, "|jack return|jack comes home|"},
    HeaderWords{Use::dimension, hammerReturn, "|hammer return|hammer falls back|"},
    HeaderWords{Use::dimension, hammerTravel, "|hammer traveling|hammer travelling|straight travel|"},
    HeaderWords{Use::dimension, hammerSpace, "|hammer space|hammer spacing|"},
    HeaderWords{Use::dimension, hammerSquare, "|hammer square|hammer lean|"},
    HeaderWords{Use::dimension, stringFit, "|string fit|hammer fit|hammer to string|"},
    HeaderWords{Use::dimension, jackPosition, "|jack position|jack fore and aft|"},
    HeaderWords{Use::dimension, leverHeight, "|lever height|repetition lever|"},
    HeaderWords{Use::dimension, repetitionSpring, "|repetition spring|rep spring|"},
    HeaderWords{Use::dimension, keyFit, "|key fit|key ease|"},
    HeaderWords{Use::dimension, keySquare, "|key square|key lean|"},
    HeaderWords{Use::dimension, keySpace, "|key space|key spacing|"},
    HeaderWords{Use::dimension, damperLine, "|damper line|damper by pedal|"},
    HeaderWords{Use::dimension, damperSeat, "|damper seat|damping|"},
    HeaderWords{Use::dimension, frameBed, "|frame bed|bedding|"},
    HeaderWords{Use::dimension, strikeLine, "|strike line|"},
    // German
    HeaderWords{Use::dimension, keyHeight, "|hohe|hoehe|tastenhohe|tastenhoehe|tastaturhohe|klaviaturhohe|niveau|"},
    HeaderWords{Use::dimension, sharpHeight, "|obertastenhohe|obertastenhoehe|hohe obertasten|"},
    HeaderWords{Use::dimension, keyDip, "|tiefgang|tastentiefgang|spieltiefe|tastentiefe|tastengang|"},
    HeaderWords{Use::dimension, lostMotion, "|luft|spielluft|stosszungenluft|stoss zungenluft|leergang|toter gang|"},
    HeaderWords{Use::dimension, blow, "|steighohe|steighoehe|hammersteighohe|hammerweg|hammerhub|hammerabstand|"},
    HeaderWords{Use::dimension, letOff, "|auslosung|ausloesung|auslosen|auslosepunkt|"},
    HeaderWords{Use::dimension, dimension::drop, "|abnick|abnicken|"},
    HeaderWords{Use::dimension, aftertouch, "|nachdruck|durchdruck|"},
    HeaderWords{Use::dimension, checking, "|fanger|faenger|fang|fangabstand|fangerabstand|"},
    HeaderWords{Use::dimension, damperStart, "|dampferbeginn|dampferabhub|dampferabhebung|dampferloffel|"},
    HeaderWords{Use::dimension, damperRise, "|dampferhub|"},
    HeaderWords{Use::ambiguous, damperStart, "|dampfer|dampfung|"},
    HeaderWords{Use::dimension, halfBlow, "|halbgang|halbe steighohe|"},
    HeaderWords{Use::dimension, strap, "|bandchen|baendchen|"},
    HeaderWords{Use::dimension, downWeight, "|niedergewicht|abwartsgewicht|spielgewicht|"},
    HeaderWords{Use::dimension, upWeight, "|aufgewicht|aufwartsgewicht|ruckkehrgewicht|"},
    // French
    HeaderWords{Use::dimension, keyHeight, "|hauteur|hauteur touche|hauteur des touches|hauteur du clavier|"},
    HeaderWords{Use::dimension, sharpHeight, "|hauteur dieses|hauteur des dieses|hauteur des feintes|"},
    HeaderWords{Use::dimension, keyDip, "|enfoncement|enfoncement touche|enfoncement de la touche|profondeur|"},
    HeaderWords{Use::dimension, lostMotion, "|jeu|jeu mort|course morte|"},
    HeaderWords{Use::dimension, blow, "|course marteau|course du marteau|course des marteaux|distance marteau corde|"},
    HeaderWords{Use::dimension, letOff, "|echappement|"},
    HeaderWords{Use::dimension, dimension::drop, "|chute|chute du marteau|"},
    HeaderWords{Use::dimension, aftertouch,
                "|apres echappement|enfoncement apres echappement|course apres echappement|"},
    HeaderWords{Use::dimension, checking, "|attrape|attrapes|"},
    HeaderWords{Use::dimension, damperStart, "|depart etouffoir|depart des etouffoirs|"},
    HeaderWords{Use::dimension, damperRise, "|levee des etouffoirs|"},
    HeaderWords{Use::ambiguous, damperStart, "|etouffoir|etouffoirs|"},
    HeaderWords{Use::dimension, halfBlow, "|demi course|"},
    HeaderWords{Use::dimension, downWeight, "|poids d'enfoncement|poids descendant|"},
    HeaderWords{Use::dimension, upWeight, "|poids de remontee|poids de releve|poids montant|"},
    // Spanish
    HeaderWords{Use::dimension, keyHeight, "|altura|altura tecla|altura de tecla|altura de teclas|"},
    HeaderWords{Use::dimension, sharpHeight, "|altura de sostenidos|"},
    HeaderWords{Use::dimension, keyDip, "|hundimiento|calado|profundidad|profundidad de tecla|"},
    HeaderWords{Use::dimension, lostMotion, "|juego|juego muerto|holgura|movimiento perdido|"},
    HeaderWords{Use::dimension, blow, "|recorrido del martillo|recorrido de martillo|distancia de golpe|"},
    HeaderWords{Use::dimension, dimension::drop, "|caida|caida del martillo|"},
    HeaderWords{Use::dimension, aftertouch, "|despues del escape|"},
    HeaderWords{Use::dimension, checking, "|recepcion|retencion|atrape|"},
    HeaderWords{Use::dimension, damperStart, "|inicio apagador|inicio de apagadores|"},
    HeaderWords{Use::ambiguous, damperStart, "|apagador|apagadores|"},
    HeaderWords{Use::dimension, halfBlow, "|media carrera|"},
    HeaderWords{Use::dimension, downWeight, "|peso de bajada|peso de descenso|"},
    HeaderWords{Use::dimension, upWeight, "|peso de subida|peso de retorno|"},
    // Italian
    HeaderWords{Use::dimension, keyHeight, "|altezza|altezza tasto|altezza tasti|altezza dei tasti|"},
    HeaderWords{Use::dimension, sharpHeight, "|altezza diesis|altezza tasti neri|"},
    HeaderWords{Use::dimension, keyDip, "|affondo|affondo tasto|profondita|profondita tasto|corsa tasto|"},
    HeaderWords{Use::dimension, lostMotion, "|gioco|corsa a vuoto|moto perso|"},
    HeaderWords{Use::dimension, blow, "|corsa martello|corsa del martello|distanza martello|"},
    HeaderWords{Use::dimension, letOff, "|scappamento|"},
    HeaderWords{Use::dimension, dimension::drop, "|caduta|caduta martello|"},
    HeaderWords{Use::dimension, aftertouch, "|dopo scappamento|dopotocco|"},
    HeaderWords{Use::dimension, checking, "|paramartello|parata|"},
    HeaderWords{Use::dimension, damperStart, "|inizio smorzatore|inizio smorzatori|"},
    HeaderWords{Use::ambiguous, damperStart, "|smorzatore|smorzatori|"},
    HeaderWords{Use::dimension, halfBlow, "|mezza corsa|"},
    HeaderWords{Use::dimension, downWeight, "|peso di abbassamento|peso di discesa|"},
    HeaderWords{Use::dimension, upWeight, "|peso di ritorno|peso di risalita|"},
    // Dutch
    HeaderWords{Use::dimension, keyHeight, "|toetshoogte|hoogte|"},
    HeaderWords{Use::dimension, sharpHeight, "|hoogte boventoetsen|boventoetshoogte|"},
    HeaderWords{Use::dimension, keyDip, "|toetsdiepgang|diepgang|toetsdiepte|"},
    HeaderWords{Use::dimension, lostMotion, "|speling|loze gang|dode gang|"},
    HeaderWords{Use::dimension, blow, "|slagweg|hamerweg|slaglengte|hamerslag|"},
    HeaderWords{Use::dimension, letOff, "|uitlossing|afgang|"},
    HeaderWords{Use::dimension, dimension::drop, "|val|hamerval|"},
    HeaderWords{Use::dimension, aftertouch, "|nadruk|"},
    HeaderWords{Use::dimension, checking, "|vanger|vangers|vangafstand|"},
    HeaderWords{Use::dimension, damperStart, "|begin demper|demperbegin|"},
    HeaderWords{Use::ambiguous, damperStart, "|demper|dempers|"},
    HeaderWords{Use::dimension, halfBlow, "|halve slag|"},
    HeaderWords{Use::dimension, strap, "|bandje|bandjes|"},
    HeaderWords{Use::dimension, downWeight, "|neergewicht|"},
    HeaderWords{Use::dimension, upWeight, "|opgewicht|teruggewicht|"},
};

} // namespace

std::span<const HeaderWords> headerWords() {
    return kWords;
}

} // namespace hammerline
