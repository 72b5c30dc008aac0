#include "ui/widgets/spoken.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <QWidget>

namespace hammerline {

namespace {

class SpokenChart : public QAccessibleWidget {
public:
    SpokenChart(QWidget* widget, const Speaking& speaking)
        : QAccessibleWidget(widget, QAccessible::Chart), m_speaking(speaking) {}
    QString text(QAccessible::Text text) const override {
        return text == QAccessible::Description ? m_speaking.spoken() : QAccessibleWidget::text(text);
    }

private:
    const Speaking& m_speaking;
};

QAccessibleInterface* chartOf(const QString&, QObject* object) {
    auto* widget = qobject_cast<QWidget*>(object);
    const auto* speaking = dynamic_cast<const Speaking*>(object);
    return widget && speaking ? new SpokenChart(widget, *speaking) : nullptr;
}

} // namespace

void installSpoken() {
    QAccessible::removeFactory(chartOf); // once only, however often it is called
    QAccessible::installFactory(chartOf);
}

void sayAnew(QWidget& widget) {
    if (!widget.hasFocus() || !QAccessible::isActive()) return;
    QAccessibleEvent event(&widget, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
}

void sayAt(QWidget& field, const QString& sentence) {
    if (field.accessibleDescription() != sentence) field.setAccessibleDescription(sentence);
}

} // namespace hammerline
