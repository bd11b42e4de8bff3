//! Who does the work for somebody, on a phone of their own: asked first, then heard for the owner,
//! until a STOP that ends it for this phone alone.

use budwood_scheduler::{Body, Helper, MessageId, Passed, PersonId, Phone, Source};

use crate::{
    args,
    engine::{
        outcome::Outcome,
        questions::{helpers::Says, passing::ending},
        said::{Done, Said},
        step::Step,
        turn::Telling,
        view::View,
    },
    wording::{Key, Phrase, Value},
    words::message::Purpose,
};

impl Step<'_> {
    /// What the phone of a helper says of itself; none where it speaks for the owner.
    pub(crate) fn helper_heard(
        &mut self,
        number: &str,
        message: MessageId,
        text: &str,
    ) -> Option<Done> {
        let view = self.view();
        let phone = view.world.directory.phone(number)?.clone();
        let (person, helper) = phone.helper()?;
        let name = helper.name.clone();
        if helper.agreed_on.is_some() {
            return view
                .is_stop(text)
                .then(|| self.end_helper(phone, (person, &name), message));
        }
        Some(match view.helper_says(person, text) {
            Says::Yes => self.helper_agrees(phone, (person, &name), message),
            Says::No => self.end_helper(phone, (person, &name), message),
            Says::Other => {
                let invited = view.helper_invited(person, &name);
                let said = answer(&view, message, (number, person), invited);
                Outcome::Answered.saying([said])
            }
        })
    }

    fn helper_agrees(
        &mut self,
        mut phone: Phone,
        (person, name): (PersonId, &str),
        message: MessageId,
    ) -> Done {
        let today = self.view().today_of(person);
        for link in phone.links.iter_mut().filter(|link| link.until.is_none()) {
            if let Some(helper) = &mut link.helper {
                helper.agreed_on = Some(today);
            }
        }
        let number = phone.number.clone();
        self.put_phone(phone);
        let now = self.now;
        // They know by now who texts.
        self.talk(&number).welcomed_at = Some(now);
        self.tell_helper(person, message, Passed::Helper { person });
        let view = self.view();
        let owner = view.person(person);
        let args = args! {
            "text" => Value::name(name),
            "name" => Value::name(owner.map_or("", |owner| &owner.name)),
            "digits" => ending(&number),
        };
        let agreed = Phrase::new(Key::HelperAgreed, args.clone());
        let said = answer(&view, message, (&number, person), agreed);
        let adviser = owner.and_then(|owner| view.adviser_of(owner));
        let notice = adviser.and_then(|adviser| {
            view.notice_to(adviser, message, Phrase::new(Key::HelperNotice, args))
        });
        Outcome::Started.saying([Some(said), notice].into_iter().flatten())
    }

    fn end_helper(
        &mut self,
        mut phone: Phone,
        (person, name): (PersonId, &str),
        message: MessageId,
    ) -> Done {
        let view = self.view();
        let owner = view.person(person).map_or("", |owner| &owner.name);
        let args = args! { "text" => Value::name(name), "name" => Value::name(owner) };
        let ended = Phrase::new(Key::HelperEnded, args);
        let said = answer(&view, message, (&phone.number, person), ended);
        let today = view.today_of(person);
        for link in phone.links.iter_mut().filter(|link| link.until.is_none()) {
            if link.helper.is_some() {
                link.until = Some(today);
                // The name of who is gone is nobody's business any more.
                link.helper = Some(Helper {
                    name: String::new(),
                    agreed_on: None,
                });
            }
        }
        let number = phone.number.clone();
        self.cancel_waiting(&number);
        self.put_phone(phone);
        self.tell_helper(person, message, Passed::HelperLeft { person });
        Outcome::Stopped.saying([said])
    }

    fn tell_helper(&mut self, person: PersonId, message: MessageId, passed: Passed) {
        let telling = Telling {
            by: Some(person),
            source: Source::OwnText,
            message: Some(message),
        };
        self.record(telling, None, Body::Passed(passed));
    }
}

fn answer(view: &View<'_>, to: MessageId, phone: (&str, PersonId), phrase: Phrase) -> Said {
    Said {
        purpose: Purpose::Answer { to },
        ..view.to_number(to, phone, phrase)
    }
}
