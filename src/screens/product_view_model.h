// screens/product_view_model.h: the shop's products: what their sheets say, typed once.
//
// Pages:   the list; one product; the points of one of its milestones; one drive-away table. A page
//          that is left with something wrong stays open and says so at the field.
// Who:     anybody reads it; a manager (`manager`) types. A product that is no longer used is
//          retired, not deleted.
// Threads: GUI thread. Errors go to Session::failed; what was typed stays.
#pragma once

#include <QObject>
#include <QStringList>
#include <optional>
#include <qqmlregistration.h>

#include "screens/product_form.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class ProductViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to ShopSheet")
  Q_PROPERTY(bool manager READ manager NOTIFY changed)
  Q_PROPERTY(Page page READ page NOTIFY changed)
  Q_PROPERTY(QString pageTitle READ pageTitle NOTIFY changed)
  Q_PROPERTY(QString backWords READ backWords NOTIFY changed)
  // Roles: key, title, facts.
  Q_PROPERTY(QAbstractItemModel* products READ products CONSTANT)
  Q_PROPERTY(int productCount READ productCount NOTIFY changed)
  // Of the open product. Roles: key, title, typed, wrong, hint.
  Q_PROPERTY(QAbstractItemModel* fields READ fields CONSTANT)
  Q_PROPERTY(QStringList kinds READ kinds CONSTANT)
  Q_PROPERTY(int kind READ kind NOTIFY changed)
  Q_PROPERTY(QStringList cures READ cures CONSTANT)
  Q_PROPERTY(int cure READ cure NOTIFY changed)
  Q_PROPERTY(QString cureNote READ cureNote NOTIFY changed)
  Q_PROPERTY(bool paint READ paint NOTIFY changed)
  Q_PROPERTY(bool glass READ glass NOTIFY changed)
  Q_PROPERTY(bool activated READ activated NOTIFY changed)
  Q_PROPERTY(bool known READ known NOTIFY changed)  // it is in the shop already
  Q_PROPERTY(bool retired READ retired NOTIFY changed)
  // Roles: key, title, words, wrong.
  Q_PROPERTY(QAbstractItemModel* milestones READ milestones CONSTANT)
  Q_PROPERTY(QAbstractItemModel* tables READ tables CONSTANT)
  // Of the open milestone or table. Roles: key, temperature, humidity, minutes, wrong.
  Q_PROPERTY(QAbstractItemModel* rows READ rows CONSTANT)
  Q_PROPERTY(bool withHumidity READ withHumidity NOTIFY changed)
  Q_PROPERTY(QString caseName READ caseName NOTIFY changed)
  Q_PROPERTY(QString rowsWrong READ rowsWrong NOTIFY changed)
  Q_PROPERTY(QString unit READ unit NOTIFY changed)
  Q_PROPERTY(QString refusal READ refusal NOTIFY changed)  // why it was not kept; "" nothing

 public:
  enum class Page { List, Product, Milestone, Table };
  Q_ENUM(Page)

  explicit ProductViewModel(Session& session, QObject* parent = nullptr);

  bool manager() const;
  Page page() const { return page_; }
  QString pageTitle() const;
  QString backWords() const;
  QAbstractItemModel* products() { return &products_; }
  int productCount() const { return products_.rowCount(); }
  QAbstractItemModel* fields() { return &fields_; }
  QStringList kinds() const;
  int kind() const { return static_cast<int>(form_.kind); }
  QStringList cures() const;
  int cure() const { return static_cast<int>(form_.cure); }
  QString cureNote() const;
  bool paint() const { return is_paint(form_.kind); }
  bool glass() const { return form_.kind == job::ProductKind::GlassUrethane; }
  bool activated() const { return form_.activated; }
  bool known() const { return form_.id.has_value(); }
  bool retired() const { return form_.retired; }
  QAbstractItemModel* milestones() { return &milestones_; }
  QAbstractItemModel* tables() { return &tables_; }
  QAbstractItemModel* rows() { return &rows_; }
  bool withHumidity() const { return page_ == Page::Table; }
  QString caseName() const;
  QString rowsWrong() const;
  QString unit() const { return temperature_unit(session_.units()); }
  QString refusal() const { return refusal_; }

  Q_INVOKABLE void toList();
  Q_INVOKABLE void open(const QString& product);  // "" a new one
  Q_INVOKABLE void sayField(const QString& key, const QString& text);
  Q_INVOKABLE void chooseKind(int kind);
  Q_INVOKABLE void chooseCure(int cure);
  Q_INVOKABLE void sayActivated(bool activated);
  Q_INVOKABLE void openMilestone(const QString& key);
  Q_INVOKABLE void openTable(const QString& key);                                // "" a new one
  Q_INVOKABLE void sayRow(const QString& key, int column, const QString& text);  // 0 1 2
  Q_INVOKABLE void sayCase(const QString& name);
  Q_INVOKABLE void addRow();
  Q_INVOKABLE void dropRow(const QString& key);
  Q_INVOKABLE void dropTable();
  Q_INVOKABLE void back();  // one page up; from rows only when they hang together
  Q_INVOKABLE void keep();
  Q_INVOKABLE void retire(bool retired);

 signals:
  void changed();
  void kept();

 private:
  void refresh();
  void show_product();
  void show_rows();
  std::vector<ProductRow>* open_rows();
  const std::vector<ProductRow>* open_rows() const;
  void post(job::Product said);

  Session& session_;
  RowList products_;
  RowList fields_;
  RowList milestones_;
  RowList tables_;
  RowList rows_;
  Page page_ = Page::List;
  ProductForm form_;
  trade::CureMilestone milestone_{};
  std::size_t table_ = 0;
  QString refusal_;
};

}  // namespace jambline::screens
